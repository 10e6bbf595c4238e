import { fold } from "@/lib/codebook";
import { type HeaderUnit, unitOf } from "../match/header-unit";

export type DecimalMark = "," | ".";
export type NumberRead = { readonly value: number; readonly unit: HeaderUnit | null; readonly decimals: number };

const shape = /^([-+\u2212]?)\s*(\d[\d.,'\u00a0\u202f \u2019]*|[.,]\d+)\s*([^\d\s].*)?$/s;

/** Digits and marks of a number, and the unit typed behind it; `null` when the text is no number. */
export function splitNumber(cell: string): { sign: string; digits: string; unit: HeaderUnit | null } | null {
  const match = shape.exec(cell.trim());
  if (!match) return null;
  const tail = (match[3] ?? "").trim();
  const unit = tail === "" ? null : unitOf(tail);
  if (tail !== "" && unit === null) return null;
  return { sign: match[1] === "" || match[1] === "+" ? "" : "-", digits: (match[2] as string).trim(), unit };
}

/** A typed number under a decimal mark; `null` when it is none. Marks of thousands are taken where they stand in threes. */
export function readNumber(cell: string, mark: DecimalMark): NumberRead | null {
  const split = splitNumber(cell);
  if (!split) return null;
  const [whole = "", fraction, ...more] = split.digits.split(mark);
  if (more.length > 0 || (fraction !== undefined && !/^\d*$/.test(fraction))) return null;
  const plain = withoutThousands(whole);
  if (plain === null) return null;
  const value = Number(`${split.sign}${plain === "" ? "0" : plain}.${fraction || "0"}`);
  return { value: value === 0 ? 0 : value, unit: split.unit, decimals: fraction?.length ?? 0 };
}

function withoutThousands(whole: string): string | null {
  if (/^\d*$/.test(whole)) return whole;
  const mark = /\D/.exec(whole)?.[0] ?? "";
  const groups = whole.split(mark);
  const inThrees = /^\d{1,3}$/.test(groups[0] ?? "") && groups.slice(1).every((group) => /^\d{3}$/.test(group));
  return inThrees ? groups.join("") : null;
}

/** A number that a spreadsheet wrote as powers of ten, or gave up on: its digits are lost. */
export function isLostNumber(cell: string): boolean {
  const text = cell.trim();
  return /^\d([.,]\d+)?e\+?\d+$/i.test(text) || /^#{2,}$/.test(text) || /^#(REF|VALUE|N\/A|NAME|NUM|DIV\/0|NULL)[!?]?$/i.test(text);
}

/** A date where a number or code was typed: `3/4` or `5.6` that a spreadsheet took for a day of the year. @example isLostToDate("04-Mar") // => true */
export function isLostToDate(cell: string): boolean {
  return /^(\d{1,2}[-. ](jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)|(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[- ]\d{2,4})$/.test(
    fold(cell).replace(" ", "-"),
  );
}
