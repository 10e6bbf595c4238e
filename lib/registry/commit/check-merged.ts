import type { Connection } from "@/db/open";
import type { FindingCode, TableName } from "@/lib/codebook";
import type { Finding, StrippedRows } from "@/lib/intake";
import { type RowFinding, RowsRefused } from "../errors";
import { type OnPace, tickOf } from "../pace";
import { columnsOfRow, fromByEntity } from "../read/row-sql";
import { rowMaker } from "../read/rows";
import type { FindingCounts } from "../types";
import { keyText, layoutOf } from "./cells";
import { type Check, located } from "./check-brought";

/** Segments that the batch touched and that the check of brought rows can't have seen whole. */
export type Touched = { readonly batch: number; readonly touched: ReadonlySet<number>; readonly onPace?: OnPace | undefined };

const isError = ({ severity }: Finding) => severity === "error";
const segmentsAtOnce = 500;
type Raw = (string | number | null)[];

/** A reader of the rows of some segments as they stand in the transaction: their persons, they themselves, their events. */
function readerOf(db: Connection, batch: number): (segments: readonly number[]) => StrippedRows {
  const read = <T extends TableName>(table: T, where: string) => {
    const make = rowMaker(table);
    const rows = db.prepare(`SELECT ${columnsOfRow(table)} ${fromByEntity(table)} WHERE ${where}`).raw();
    return (json: string) => (rows.all({ batch, segments: json }) as Raw[]).map(make);
  };
  const among = "IN (SELECT value FROM json_each(@segments))";
  const persons = read("person", `i.entity IN (SELECT person_entity FROM segment_id WHERE entity ${among})`);
  const segments = read("segment", `i.entity ${among}`);
  const events = read("event", `i.segment_entity ${among}`);
  return (entities) => {
    const json = JSON.stringify(entities);
    return { person: persons(json), bodyMeasure: [], segment: segments(json), visit: [], event: events(json), score: [] };
  };
}

/** Where a held row was brought, if it was. */
function broughtAt(brought: StrippedRows, table: TableName, row: object): number | null {
  const layout = layoutOf(table);
  const key = keyText(layout, row as Readonly<Record<string, unknown>>);
  const place = brought[table].findIndex((one) => keyText(layout, one) === key);
  return place < 0 ? null : place;
}

function inBrought(finding: RowFinding, held: StrippedRows, brought: StrippedRows): RowFinding {
  const { table, place } = finding;
  const row = table === null || place === null ? undefined : held[table][place];
  return { ...finding, place: table === null || !row ? null : broughtAt(brought, table, row) };
}

/**
 * Checks segments again as they are held now, each brought row merged with what was known: two sheets that each say a part must not hold
 * together what no sheet may say alone. An `ask` that only the merged row raises is counted, not refused: the tab that asks sees no merged
 * rows, and an answer that leaves a cell blank would not clear the one held.
 * @returns how often each `ask` stands
 * @throws RowsRefused
 */
export function requireMerged(db: Connection, { batch, touched, onPace }: Touched, brought: StrippedRows, check: Check): FindingCounts {
  const asks: { [C in FindingCode]?: number } = {};
  if (touched.size === 0) return asks;
  const read = readerOf(db, batch);
  const entities = [...touched];
  const tick = tickOf(onPace, "check", () => entities.length);
  for (let from = 0; from < entities.length; from += segmentsAtOnce) {
    const held = read(entities.slice(from, from + segmentsAtOnce));
    const findings = check(held);
    held.segment.forEach(tick);
    if (findings.some(isError)) {
      throw new RowsRefused(located(held, check, isError).map((finding) => inBrought(finding, held, brought)));
    }
    for (const { code, severity } of findings) if (severity === "ask") asks[code] = (asks[code] ?? 0) + 1;
  }
  return asks;
}
