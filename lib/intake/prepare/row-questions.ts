import { fieldOf, findingSeverities, tableNames, tables } from "@/lib/codebook";
import { type AnswerCode, answersOf } from "../mapping/mapping-schema";
import type { Finding } from "../types";
import type { PlacedFact } from "./draft";
import { headersByField, placeFact } from "./place-facts";
import type { Question } from "./question";
import type { StrippedSheet } from "./strip-drafts";
import type { StrippedDraft } from "./stripped-draft";

type Open = Omit<Question, "rows" | "samples"> & { readonly rows: number[]; readonly samples: { row: number; cell: string }[] };

const sampleCount = 3;

/** Questions that rows raise, one for all rows that the same answer would settle. */
export function questionsOfRows(sheet: StrippedSheet, stands: (row: StrippedDraft) => boolean): readonly Question[] {
  const headers = headersByField(sheet.plan.columns);
  const open = new Map<string, Open>();
  // a row that is set aside needn't be asked about: it comes again
  for (const stripped of sheet.stripped.filter(stands)) {
    for (const fact of stripped.facts) {
      if (findingSeverities[fact.code] === "ask")
        addTo(open, fact, placeFact(fact, stripped, headers), cellOf(sheet, stripped, headers, fact));
    }
  }
  return [...open.values()];
}

function cellOf(
  { sheet }: StrippedSheet,
  { draft }: StrippedDraft,
  headers: ReadonlyMap<string, string>,
  { column, field }: PlacedFact,
): string {
  const header = column ?? headers.get(field ?? "") ?? "";
  return sheet.rows[draft.index]?.[sheet.headers.indexOf(header)] ?? "";
}

function addTo(open: Map<string, Open>, fact: PlacedFact, finding: Finding, cell: string): void {
  const spelling = fact.code === "value-unknown" ? cell : null;
  const key = [fact.code, finding.column, spelling?.toLowerCase()].join("\u001f");
  const held = open.get(key) ?? openQuestion(fact, finding, spelling);
  open.set(key, held);
  const row = finding.row ?? 0;
  held.rows.push(row);
  if (held.samples.length < sampleCount) held.samples.push({ row, cell });
}

function openQuestion({ code, about = {} }: PlacedFact, finding: Finding, spelling: string | null): Open {
  const { file, column, field } = finding;
  const isValue = code === "value-unknown";
  return {
    code,
    file: file ?? "",
    column,
    field,
    choices: isValue ? codesOf(field) : (answersOf[code as AnswerCode] ?? []),
    settledBy: isValue ? "values" : "answers",
    rows: [],
    samples: [],
    spelling: spelling === null ? null : { text: spelling, ofOurs: about.spelling !== undefined },
    finding,
  };
}

/** Codes of the field that a target's id names, in whatever table has one of them. */
function codesOf(id: string | null): readonly string[] {
  const name = id?.split(".")[0] ?? "";
  const owner = tableNames.find((table) => name in tables[table].fields);
  const field = owner ? fieldOf(owner, name) : null;
  return field?.kind === "code" ? field.codes : [];
}
