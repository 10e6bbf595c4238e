import { type FindingCode, tableNames, type Value } from "@/lib/codebook";
import type { UnitKeyRecord } from "../key";
import type { Finding, StrippedRows } from "../types";
import type { CommitHead } from "./head";

export type Commit = {
  readonly rows: StrippedRows;
  readonly findings: Readonly<Partial<Record<FindingCode, number>>>;
  readonly unitKey?: UnitKeyRecord;
  /** Corrections that the person let the sheet overrule; none unless said. */
  readonly overCorrections?: number;
};

/** Findings by code: all that is told of them outside the place where the file is. */
export function countFindings(findings: readonly Finding[]): Readonly<Partial<Record<FindingCode, number>>> {
  const counts: Partial<Record<FindingCode, number>> = {};
  for (const { code } of findings) counts[code] = (counts[code] ?? 0) + 1;
  return counts;
}

/** Lines of a commit, NDJSON, each with its line end: a head, a line a row with what was recorded, parents first, an end. */
export function* encodeCommit({ rows, findings, unitKey, overCorrections = 0 }: Commit): Generator<string, void> {
  const counts = Object.fromEntries(tableNames.flatMap((table) => (rows[table].length > 0 ? [[table, rows[table].length]] : [])));
  const head: CommitHead = {
    lengthbook: 1,
    counts,
    findings,
    ...(unitKey ? { unitKey } : {}),
    ...(overCorrections > 0 ? { overCorrections } : {}),
  };
  yield lineOf(head);
  let end = 0;
  for (const table of tableNames) {
    for (const row of rows[table]) {
      yield lineOf({ table, row: recorded(row) });
      end++;
    }
  }
  yield lineOf({ end });
}

function recorded(row: Readonly<Record<string, Value>>): Record<string, Value> {
  const kept: Record<string, Value> = {};
  for (const field in row) if (row[field] !== null && row[field] !== undefined) kept[field] = row[field];
  return kept;
}

function lineOf(value: unknown): string {
  return `${JSON.stringify(value)}\n`;
}
