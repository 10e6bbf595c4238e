import { fieldsOf, type TableName, tableNames } from "@/lib/codebook";
import type { StrippedRows } from "@/lib/intake";
import type { RowFinding } from "../errors";
import type { Settings } from "../types";
import { notListed } from "./refusals";

/** Fields whose codes the unit lists itself, and where it lists them. */
const lists: Readonly<Record<string, (settings: Settings) => readonly string[]>> = {
  unit: ({ units }) => units,
  scoreCode: ({ scores }) => scores.map(({ code }) => code),
};

const listedFields = tableNames.flatMap((table) =>
  fieldsOf(table).flatMap(([field, { kind }]) => {
    if (kind !== "listed") return [];
    const list = lists[field];
    if (!list) throw new RangeError(`notListedIn requires a list of the unit's for each listed field, received none for ${field}`);
    return [{ table, field, list }];
  }),
);

/**
 * Codes that the unit's lists haven't. The form of a code is no proof of one: a surname has it too, and would be kept for ever.
 * At most one finding a row; none quotes what stood there.
 */
export function notListedIn(rows: StrippedRows, settings: Settings): readonly RowFinding[] {
  return listedFields.flatMap(({ table, field, list }) => notListedOf(table, rows[table], { field, codes: list(settings) }));
}

type Listed = { readonly field: string; readonly codes: readonly string[] };

function notListedOf(table: TableName, rows: readonly object[], { field, codes }: Listed): readonly RowFinding[] {
  const known: ReadonlySet<unknown> = new Set(codes);
  const found: RowFinding[] = [];
  for (const [place, row] of rows.entries()) {
    const value = (row as Readonly<Record<string, unknown>>)[field] ?? null;
    if (value !== null && !known.has(value)) found.push(notListed(table, place, { field, codes }));
  }
  return found;
}
