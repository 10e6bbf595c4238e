import { finding } from "../findings/finding";
import { targetId } from "../match/target";
import type { Finding } from "../types";
import type { ColumnPlan } from "./column-plan";
import type { PlacedFact } from "./draft";
import type { StrippedDraft } from "./stripped-draft";

/** Headers of a sheet by the field that they fill. */
export function headersByField(columns: readonly ColumnPlan[]): ReadonlyMap<string, string> {
  return new Map(columns.map(({ target, header }) => [targetId(target), header]));
}

/** The findings of a row, each in its column. */
export function findingsOf(stripped: StrippedDraft, headers: ReadonlyMap<string, string>): Finding[] {
  return stripped.facts.map((fact) => placeFact(fact, stripped, headers));
}

export function placeFact(
  { code, field, column, found, about = {} }: PlacedFact,
  { draft }: StrippedDraft,
  headers: ReadonlyMap<string, string>,
): Finding {
  return finding(code, { file: draft.file, row: draft.row, column: column ?? columnOf(field, headers), field }, found, about);
}

function columnOf(field: string | null, headers: ReadonlyMap<string, string>): string | null {
  return field === null ? null : (headers.get(field) ?? null);
}
