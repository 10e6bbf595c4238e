import type { NumberField } from "../cells/field-kinds";
import { perUnit } from "../cells/per-unit";
import type { HeaderUnit } from "../match/header-unit";
import { targetId } from "../match/target";
import type { LengthUnit, Sheet } from "../types";
import { type DecimalMark, readNumber } from "../values/number";
import { middleOf, samplesOf, sumOf, tallyOf, type Weighted } from "./column-cells";
import type { MappedColumn } from "./mapped-column";
import { type Question, question } from "./question";

/**
 * The unit of lengths without one in the header: millimetres where the values can be nothing else (most would be impossible as centimetres),
 * else what the person said for the file; `null` where it must be asked.
 */
export function lengthUnit(sheet: Sheet, index: number, field: NumberField, mark: DecimalMark, said: LengthUnit | null): LengthUnit | null {
  if (!field.hard) return said ?? "mm";
  const [low, high] = field.hard;
  const isOutside = (mm: number) => mm < low || mm > high;
  const values = valuesOf(sheet, index, mark).filter(([value]) => value !== 0);
  const all = sumOf(values);
  if (all === 0) return "mm";
  const notMm = sumOf(values, isOutside);
  const notCm = sumOf(values, (value) => isOutside(value * 10));
  return notCm * 2 > all && notMm * 2 < all ? "mm" : said;
}

/** Numbers of a column that bear no unit of their own. */
function valuesOf(sheet: Sheet, index: number, mark: DecimalMark): Weighted {
  return [...tallyOf(sheet, index)].flatMap(([cell, times]) => {
    const read = readNumber(cell, mark);
    return read === null || read.unit !== null ? [] : [[read.value, times] as const];
  });
}

/** The column's median in the field's unit, against which a slip of the unit shows. */
export function typicalOf(
  sheet: Sheet,
  { index }: MappedColumn,
  field: Parameters<typeof perUnit>[0],
  unit: HeaderUnit | null,
  mark: DecimalMark,
): number | null {
  const middle = middleOf(valuesOf(sheet, index, mark));
  return middle === null ? null : middle * (perUnit(field, unit) ?? 1);
}

export function askUnit(sheet: Sheet, { header, target, index }: MappedColumn, choices: readonly string[]): Question {
  return question("unit-unknown", { file: sheet.file, column: header, field: targetId(target) }, "numbers without a unit", {
    choices,
    settledBy: "units",
    about: { units: choices.join(", ") },
    samples: samplesOf(sheet, index),
  });
}
