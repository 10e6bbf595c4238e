import { targetId } from "../match/target";
import type { LengthUnit, Mapping, TimeUnit } from "../types";
import type { PreparedColumns } from "./prepare-columns";

const units: ReadonlySet<string> = new Set(["mm", "cm", "m", "in", "days", "weeks", "months", "years"]);

/** A mapping with all that was settled for these files, by header; columns dropped by what they say stay out of it. */
export function settledMapping(columns: readonly PreparedColumns[], mapping: Mapping): Mapping {
  const filled = columns.flatMap(({ plan }) => plan.columns.map(({ header, target }) => [header, targetId(target)] as const));
  const settled = columns.flatMap(({ plan }) =>
    plan.columns.flatMap(({ header, reading }) => {
      const unit = "unit" in reading ? reading.unit : null;
      return unit !== null && units.has(unit) ? [[header, unit as LengthUnit | TimeUnit] as const] : [];
    }),
  );
  const dates = columns.map(({ plan }) => plan.dates).find((order) => order !== null) ?? mapping.dates;
  return {
    ...mapping,
    columns: { ...mapping.columns, ...Object.fromEntries(filled) },
    units: { ...mapping.units, ...Object.fromEntries(settled) },
    dates,
  };
}
