import { excelSerial } from "../../values/excel-serial";

/** What the cells of a workbook are read by. */
export type CellRules = {
  readonly strings: readonly string[];
  /** By style: whether it shows a number as a date. */
  readonly dates: readonly boolean[];
  readonly system: 1900 | 1904;
};

/** A cell of markup: its type, its style and what stands in it. */
export type RawCell = { readonly type: string; readonly style: number; readonly value: string; readonly inline: string };

/**
 * The text of a cell, as a file of text would hold it: a date as year-month-day, a number with a point, an error as its sign.
 * Types: ISO/IEC 29500-1, 18.18.11.
 */
export function cellText({ type, style, value, inline }: RawCell, { strings, dates, system }: CellRules): string {
  switch (type) {
    case "s":
      return strings[Number(value)] ?? "";
    case "inlineStr":
      return inline;
    case "b":
      return value === "" ? "" : value === "1" || value === "true" ? "true" : "false";
    case "d":
      return value.slice(0, 10);
    case "str":
    case "e":
      return value;
    default:
      return numberText(value, dates[style] ?? false, system);
  }
}

function numberText(value: string, isDate: boolean, system: 1900 | 1904): string {
  if (value === "") return "";
  const number = Number(value);
  if (!Number.isFinite(number)) return value;
  const day = isDate ? excelSerial(Math.floor(number), { system }) : null;
  if (day) return `${day.year}-${String(day.month).padStart(2, "0")}-${String(day.day).padStart(2, "0")}`;
  // a spreadsheet keeps 15 digits; the rest is the dust of binary fractions
  const plain = String(Number(number.toPrecision(15)));
  // a point is always the decimal mark here: three digits behind it must not pass for thousands
  return /^-?\d{1,3}\.\d{3}$/.test(plain) ? `${plain}0` : plain;
}
