import type { Field } from "@/lib/codebook";
import type { HeaderUnit } from "./header-unit";

const lengths: ReadonlySet<HeaderUnit> = new Set(["mm", "cm", "m", "in"]);
const times: ReadonlySet<HeaderUnit> = new Set(["days", "weeks", "months", "years"]);

/** Whether a column of a field can stand in a unit; a header with another one means something else. */
export function unitFits(field: Field | null, unit: HeaderUnit | null): boolean {
  if (unit === null) return true;
  if (field === null) return false;
  if (field.kind === "day" || field.kind === "count") return times.has(unit);
  if (field.kind !== "number") return false;
  if (field.unit === "mm") return lengths.has(unit);
  if (field.unit === "years") return unit === "years" || unit === "months";
  return field.unit === unit;
}
