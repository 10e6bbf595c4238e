import { detectInCell, detectInHeader } from "../detect";
import { targetId } from "../match/target";
import type { LengthUnit, Mapping, TimeUnit } from "../types";
import type { PreparedColumns } from "./prepare-columns";

const units: ReadonlySet<string> = new Set(["mm", "cm", "m", "in", "days", "weeks", "months", "years"]);

/**
 * A mapping with all that was settled for a sheet, by header; columns dropped by what they say stay out of it, and so does every header
 * and spelling in which an identifier is found: a mapping is kept, the file isn't.
 */
export function settledMapping({ plan, known }: PreparedColumns, mapping: Mapping): Mapping {
  const filled = plan.columns.map(({ header, target }) => [header, targetId(target)] as const);
  const names = known();
  const isNamed = (detect: typeof detectInHeader) => (text: string) =>
    detect(text, { known: names }).some(({ level }) => level === "block");
  return {
    ...mapping,
    columns: namingNobody({ ...mapping.columns, ...Object.fromEntries(filled) }, isNamed(detectInHeader)),
    units: namingNobody({ ...mapping.units, ...Object.fromEntries(plan.columns.flatMap(unitOf)) }, isNamed(detectInHeader)),
    values: Object.fromEntries(
      Object.entries(mapping.values).map(([field, spellings]) => [field, namingNobody(spellings, isNamed(detectInCell))]),
    ),
    dates: plan.dates ?? mapping.dates,
  };
}

function unitOf({ header, reading }: PreparedColumns["plan"]["columns"][number]): (readonly [string, LengthUnit | TimeUnit])[] {
  const unit = "unit" in reading ? reading.unit : null;
  return unit !== null && units.has(unit) ? [[header, unit as LengthUnit | TimeUnit]] : [];
}

function namingNobody<T>(record: Readonly<Record<string, T>>, isSomeone: (text: string) => boolean): Readonly<Record<string, T>> {
  return Object.fromEntries(Object.entries(record).filter(([text]) => !isSomeone(text)));
}
