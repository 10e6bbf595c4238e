import { type CorrectionReason, fieldOf, type TableName, type Value } from "@/lib/codebook";
import type { Correction } from "@/lib/registry";
import { type Held, kindOf, shown, unitOf } from "./days";
import type { CaseRows } from "./rows-of-case";
import { zeroFor } from "./zero";

/** A field of the case that was corrected by hand: what the unit's sheet said of it, and why. */
export type CaseCorrection = Omit<Held, "value"> & {
  readonly table: TableName;
  readonly entity: number;
  readonly sheet: Value;
  readonly value: Value;
  readonly reason: CorrectionReason;
  readonly since: number;
};

/** The corrections among those that stand which are of this case. */
export function caseCorrectionsOf(standing: readonly Correction[], rows: CaseRows, first: number | null): readonly CaseCorrection[] {
  const person = rows.person.row.person;
  return standing
    .filter(({ key }) => key.person === person)
    .map(({ table, entity, key, field: id, sheet, value, reason, since }) => {
      const field = fieldOf(table, id);
      const word = (said: Value) => shown(field, said, zeroFor(key, first));
      return {
        table,
        entity,
        field: id,
        label: field.label,
        kind: kindOf(field),
        unit: unitOf(field),
        sheet: word(sheet),
        value: word(value),
        reason,
        since,
      };
    });
}
