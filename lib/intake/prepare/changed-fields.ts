import type { TableName } from "@/lib/codebook";
import type { AnyRow } from "./blank-row";
import type { HeldIndex } from "./held-index";
import type { HeldCorrection } from "./options";

export type ChangedField = { readonly field: string; readonly corrected: HeldCorrection | null };

/**
 * The fields in which a row says something else than what is held; a blank never clears. Of a field corrected by hand, what the sheet said
 * before is no change.
 */
export function changedFields(table: TableName, row: AnyRow, held: HeldIndex): readonly ChangedField[] {
  const known = held.find(table, row);
  if (!known) return [];
  const here = held.asHeld(table, row);
  const corrections = held.correctionsOf(table, row);
  return Object.keys(here).flatMap((field) => {
    const said = here[field] ?? null;
    if (said === null || said === (known[field] ?? null)) return [];
    const corrected = corrections?.get(field) ?? null;
    return corrected && said === corrected.sheet ? [] : [{ field, corrected }];
  });
}
