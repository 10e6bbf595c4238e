import {
  type EventRow,
  type FindingCode,
  fieldOf,
  type PersonRow,
  type SegmentRow,
  type TableName,
  tableNames,
  type Value,
} from "@/lib/codebook";
import type { Fact } from "../cells/cell-read";
import { finding } from "../findings/finding";
import { undatedSurgeryDay } from "../strip";
import type { Finding, StrippedRows } from "../types";
import { type CellCheck, cellChecks } from "./cell-check";
import { checkEvent } from "./check-event";
import { checkSegment } from "./check-segment";
import { knownAlone } from "./segment-fact";

/**
 * The checks of stripped rows by themselves, run where they are made and again where they are kept: cells by the codebook, each person's line,
 * order of days, implant, events. Findings have neither file nor row; `error` and `ask` must not be kept.
 */
export function checkRows(rows: StrippedRows): readonly Finding[] {
  const cells = checkCells(rows);
  if (cells.length > 0) return cells;
  const persons = new Map(rows.person.map((row) => [row.person, row as PersonRow]));
  const found: Finding[] = [];
  for (const row of rows.segment) for (const one of checkOneSegment(row, persons.get(row.person))) found.push(one);
  // few events ask what the device is
  let devices: ReadonlyMap<string, string | null> | null = null;
  for (const row of rows.event) {
    if (checkEvent(row, noFixator).length === 0) continue;
    devices ??= new Map(rows.segment.map((segment) => [keyOf(segment), segment.device]));
    for (const fact of checkEvent(row, devices.get(keyOf(row)) ?? null)) found.push(worded(fact, fact.field));
  }
  return found;
}

const noFixator = "magnetic-nail";
const nothing: readonly Finding[] = [];

function checkCells(rows: StrippedRows): Finding[] {
  const found: Finding[] = [];
  for (const table of tableNames) {
    const fields = [...cellChecks(table).keys()];
    const checks = [...cellChecks(table).values()];
    for (const row of rows[table] as readonly Readonly<Record<string, Value>>[]) {
      for (let i = 0; i < fields.length; i++) {
        const field = fields[i] as string;
        const value = row[field] ?? null;
        const fault = (checks[i] as CellCheck)(value);
        if (fault !== null)
          found.push(finding(codeOf(table, field, value === null), { field }, fault, { choices: "a value that the field can hold" }));
      }
    }
  }
  return found;
}

function codeOf(table: TableName, field: string, isBlank: boolean): FindingCode {
  if (isBlank) return "required-missing";
  const { kind } = fieldOf(table, field);
  if (kind === "day") return "not-a-date";
  return kind === "count" || kind === "number" ? "not-a-number" : "not-a-code";
}

function checkOneSegment(row: SegmentRow, person: PersonRow | undefined): readonly Finding[] {
  const context = { ...knownAlone, indication: person?.indication ?? null, aetiology: person?.aetiology ?? null };
  const facts = [...checkSegment(row, context), ...checkLine(row, person)];
  return facts.length === 0 ? nothing : facts.map((fact) => worded(fact, fact.field));
}

/** An undated person's surgery is the label of its year and episode and nothing else; a dated one's never looks like one. */
function checkLine(
  { surgeryDay, surgeryYear, episode, surgeryQuarter }: SegmentRow,
  person: PersonRow | undefined,
): readonly (Fact & { field: string })[] {
  if (!person) return [];
  const label = undatedSurgeryDay(surgeryYear, episode);
  const fits = person.line === "undated" ? surgeryDay === label && surgeryQuarter === null : surgeryDay < 1_000_000;
  return fits ? [] : [{ code: "line-differs", field: "surgeryDay", found: `a surgery day that a person’s ${person.line} line can’t hold` }];
}

function worded({ code, found, about = {} }: Fact, field: string): Finding {
  return finding(code, { field }, found, about);
}

function keyOf({ person, bone, side, surgeryDay }: Pick<SegmentRow | EventRow, "person" | "bone" | "side" | "surgeryDay">): string {
  return `${person}|${bone}|${side}|${surgeryDay}`;
}
