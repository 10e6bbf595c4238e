import { type DecimalMark, splitNumber } from "./number";

/** What a column's numbers say of their decimal mark. `open`: cells that could be thousands or decimals (`1.234`). */
export type MarkEvidence = { comma: number; point: number; open: number };

export function noMarkEvidence(): MarkEvidence {
  return { comma: 0, point: 0, open: 0 };
}

/** Adds what a cell says that stands some times. `possible` tells a number that the field can hold: thousands and decimals seldom both are. */
export function weighMark(cell: string, evidence: MarkEvidence, possible: (value: number) => boolean, times = 1): void {
  const digits = splitNumber(cell)?.digits;
  if (!digits || !/[.,]/.test(digits)) return;
  const said = markOf(digits, possible);
  if (said === ",") evidence.comma += times;
  else if (said === ".") evidence.point += times;
  else evidence.open += times;
}

function markOf(digits: string, possible: (value: number) => boolean): DecimalMark | null {
  const commas = digits.split(",").length - 1;
  const points = digits.split(".").length - 1;
  if (commas > 0 && points > 0) return digits.lastIndexOf(",") > digits.lastIndexOf(".") ? "," : ".";
  const mark: DecimalMark = commas > 0 ? "," : ".";
  const other: DecimalMark = commas > 0 ? "." : ",";
  if (commas + points > 1) return other;
  const [whole = "", after = ""] = digits.split(mark);
  if (after.length !== 3 || !/^[1-9]\d{0,2}$/.test(whole)) return mark;
  const asThousands = possible(Number(`${whole}${after}`));
  const asDecimal = possible(Number(`${whole}.${after}`));
  if (asThousands === asDecimal) return null;
  return asDecimal ? mark : other;
}

/** The mark that a column proves; `"none-needed"` without any, `"unknown"` where it must be asked for. */
export function markFrom({ comma, point, open }: MarkEvidence): DecimalMark | "none-needed" | "unknown" {
  if (comma > 0 && point > 0) return Math.min(comma, point) * 10 > Math.max(comma, point) ? "unknown" : comma > point ? "," : ".";
  if (comma > 0) return ",";
  if (point > 0) return ".";
  return open === 0 ? "none-needed" : "unknown";
}
