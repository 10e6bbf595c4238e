import { labelOfCode } from "@/lib/codebook";
import { lowerFirst } from "./describe-split";
import { conditionField, conditionUnit } from "./fields";
import { type Condition, isSet, type Where } from "./where";

/** The cohort in words, for the sentence, the caption and the methods line. */
export function describeWhere(where: Where): string {
  const parts = Object.entries(where).flatMap(([key, part]) => (part === undefined ? [] : [describePart(key, part)]));
  return parts.length === 0 ? "all segments" : parts.join(" and ");
}

function describePart(key: string, part: Condition | readonly Where[] | Where): string {
  if (key === "any") return `(${(part as readonly Where[]).map(describeWhere).join(" or ")})`;
  if (key === "all") return `(${(part as readonly Where[]).map(describeWhere).join(" and ")})`;
  if (key === "not") return `not (${describeWhere(part as Where)})`;
  return describeCondition(key, part as Condition);
}

function describeCondition(id: string, part: Condition): string {
  const label = lowerFirst(conditionField(id)?.label ?? id);
  const unit = conditionUnit(id);
  const behind = unit === null ? "" : ` ${unit}`;
  if (isSet(part)) return `${label} ${part.map((value) => valueWords(value)).join(" or ")}`;
  if ("missing" in part) return part.missing ? `${label} not recorded` : `${label} recorded`;
  if (part.from !== undefined && part.to !== undefined) return `${label} ${part.from} to ${part.to}${behind}`;
  if (part.from !== undefined) return `${label} at least ${part.from}${behind}`;
  return part.to === undefined ? label : `${label} at most ${part.to}${behind}`;
}

/** @example valueWords("magnetic-nail") // => "magnetic nail" */
export function valueWords(value: string | number | boolean | null): string {
  if (value === null) return "not recorded";
  if (typeof value === "boolean") return value ? "yes" : "no";
  return typeof value === "number" ? String(value) : labelOfCode(value).toLowerCase();
}
