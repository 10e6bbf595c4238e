import type { Value } from "@/lib/codebook";
import { CohortError } from "./check-where";
import { conditionField, conditionUnit } from "./fields";

/** One field of a split; `cuts` part a number field into bins, each from a cut up to under the next. */
export type SplitField = { readonly id: string; readonly cuts: readonly number[] };

/**
 * A field of a split as written: `bone`, or with cuts `gainMm:30/50/80`.
 * @throws CohortError when the field can't be split by, or the cuts are no rising numbers
 * @example parseSplitField("gainMm:30/50").cuts // => [30, 50]
 */
export function parseSplitField(text: string): SplitField {
  const [id = "", cutText] = text.split(":");
  const field = conditionField(id);
  if (!field) throw new CohortError("a split requires fields of the codebook that a cohort can name, received another word");
  if (cutText === undefined) return { id, cuts: [] };
  const cuts = cutText.split("/").map(Number);
  const rising = cuts.every((cut, i) => Number.isFinite(cut) && (i === 0 || cut > (cuts[i - 1] as number)));
  if (!rising || (field.kind !== "number" && field.kind !== "count"))
    throw new CohortError(`a split of ${id} requires rising numbers between strokes, such as gainMm:30/50/80`);
  return { id, cuts };
}

/** The value by which a segment is put into a group: the field's own, or the bin that it falls in. */
export function splitValue({ cuts }: SplitField, value: Value): Value {
  if (cuts.length === 0 || typeof value !== "number") return value;
  const bin = cuts.findIndex((cut) => value < cut);
  const at = bin === -1 ? cuts.length : bin;
  const [from, to] = [cuts[at - 1], cuts[at]];
  if (from === undefined) return `under ${to}`;
  return to === undefined ? `${from} and over` : `${from} to under ${to}`;
}

/** The place of a bin among the others, so that groups stand in their order. */
export function binPlace({ cuts }: SplitField, value: Value): number {
  if (typeof value !== "string") return cuts.length + 1;
  if (value.startsWith("under ")) return 0;
  return cuts.indexOf(Number(value.split(" ")[0])) + 1;
}

/**
 * A bin with the unit of its field.
 * @example binWords("gainMm", "80 and over") // => "80 mm and over"
 */
export function binWords(id: string, bin: string): string {
  const unit = conditionUnit(id);
  if (unit === null) return bin;
  return bin.endsWith(over) ? `${bin.slice(0, -over.length)} ${unit}${over}` : `${bin} ${unit}`;
}

const over = " and over";
