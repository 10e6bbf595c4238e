import type { Field, Value } from "@/lib/codebook";
import { isoOf } from "../scenario/calendar";

/** A value as the clean files have it: ISO dates, yes and no, codes, a point before decimals. */
export function cellOf(value: Value | undefined, kind: Field["kind"]): string {
  if (value === null || value === undefined) return "";
  if (kind === "day" && typeof value === "number") return isoOf(value);
  if (typeof value === "boolean") return value ? "yes" : "no";
  return String(value);
}
