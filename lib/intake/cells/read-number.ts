import { fold } from "@/lib/codebook";
import type { HeaderUnit } from "../match/header-unit";
import { describe } from "../values/describe";
import { type DecimalMark, isLostNumber, isLostToDate, readNumber } from "../values/number";
import { type CellRead, type Fact, type ReadCell, readAs, unread } from "./cell-read";
import type { CountField, NumberField } from "./field-kinds";
import { alone, notUnderstood } from "./not-understood";
import { perUnit } from "./per-unit";
import { type NumberSuspect, plausibleNumber } from "./plausible-number";

type Column = { readonly mark: DecimalMark; readonly unit: HeaderUnit | null; readonly typical?: number | null };
const eachAlone: NumberSuspect = { suspect: alone, every: false };

/** Reads a column of numbers into the field's unit; the unit typed in a cell comes before that of the column. */
export function readNumbers(field: NumberField, { mark, unit, typical = null }: Column, look: NumberSuspect = eachAlone): ReadCell {
  return (cell) => {
    const read = readNumber(cell, mark);
    if (!read) return noNumber(cell, field.unit, look);
    const factor = perUnit(field, read.unit ?? unit);
    if (factor === null) return unread("not-a-number", `a number in ${read.unit}`, { unit: field.unit });
    const value = tidy(read.value * factor);
    const result = plausibleNumber(cell, within(value, field, field.unit), look);
    const isTrap = field.unit === "mm" && result.value !== null && looksLikeCentimetres(value, typical);
    return isTrap
      ? { ...result, facts: [...result.facts, { code: "cm-typed-as-mm", found: String(value), about: { unit: "mm" } }] }
      : result;
  };
}

/** Reads a column of whole numbers: words listed in the codebook, days from weeks and months where the unit says so. */
export function readCounts(field: CountField, { mark, unit }: Column, look: NumberSuspect = eachAlone): ReadCell {
  const words = new Map(Object.entries(field.values ?? {}).map(([text, count]) => [fold(text), count]));
  return (cell) => {
    const word = words.get(fold(cell));
    if (word !== undefined) return readAs(word);
    const read = readNumber(cell, mark);
    if (!read) return noNumber(cell, "", look);
    const from = read.unit ?? unit;
    const factor = perUnit(field, from);
    if (factor === null) return unread("not-a-number", `a number in ${from}`, { unit: "a whole number" });
    const value = read.value * factor;
    if (factor === 1 && !Number.isInteger(value)) return unread("not-a-number", "a number with a fraction", { unit: "a whole number" });
    return plausibleNumber(cell, within(Math.round(value), field, ""), look);
  };
}

function noNumber(cell: string, unit: string, { suspect }: NumberSuspect): CellRead {
  if (isLostNumber(cell)) return unread("number-lost-to-spreadsheet", "a number in powers of ten or a spreadsheet’s error");
  if (isLostToDate(cell)) return unread("number-lost-to-spreadsheet", "a date");
  return notUnderstood(cell, unread("not-a-number", describe(cell), { unit }), suspect);
}

const fewestTypicalMm = 100;

/** A tenth of what the column holds otherwise. Gains differ that much by themselves; lengths of bones and bodies don't. */
function looksLikeCentimetres(mm: number, typical: number | null): boolean {
  if (typical === null || typical < fewestTypicalMm || mm <= 0 || mm * 5 > typical) return false;
  return mm * 10 >= typical * 0.6 && mm * 10 <= typical * 1.6;
}

/** A value inside the field's limits; outside the hard ones it isn't kept, outside the usual ones it is kept with a word. */
export function within(value: number, { hard, usual }: NumberField | CountField, unit: string): CellRead {
  if (hard && (value < hard[0] || value > hard[1])) {
    return unread("out-of-hard-range", String(value), { low: hard[0], high: hard[1], unit });
  }
  const facts: Fact[] = [];
  // 0 where it may stand is a statement of its own (nothing gained), not a small value
  if (usual && value !== 0 && (value < usual[0] || value > usual[1])) {
    facts.push({ code: "out-of-usual-range", found: String(value), about: { low: usual[0], high: usual[1], unit } });
  }
  return readAs(value, facts);
}

/** Without the dust of binary fractions: 4.55 cm is 45.5 mm. */
export function tidy(value: number): number {
  return Math.round(value * 1e6) / 1e6;
}
