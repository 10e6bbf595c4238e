import { wordsOfCode } from "@/lib/codebook";
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
  if (key === "not") return `not ${bracketed(part as Where)}`;
  return describeCondition(key, part as Condition);
}

/** In brackets, once: what one of several conditions says brings its own. */
function bracketed(where: Where): string {
  const words = describeWhere(where);
  const [only, ...more] = Object.keys(where);
  return more.length === 0 && (only === "any" || only === "all") ? words : `(${words})`;
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

/**
 * Whom a cohort leaves out, in words: of a single condition what its field is instead.
 * @example describeOutside({ bone: ["femur"] }) // => "bone not femur"
 * @example describeOutside({ surgeryYear: { from: 2019 } }) // => "year of surgery under 2019, or not recorded"
 */
export function describeOutside(where: Where): string {
  const [first, ...rest] = Object.entries(where);
  if (!first || rest.length > 0) return `not ${bracketed(where)}`;
  const [key, part] = first;
  if (part === undefined) return "nobody";
  if (key === "any") return `none of: ${(part as readonly Where[]).map(describeWhere).join(", ")}`;
  if (key === "all") return `not all of: ${(part as readonly Where[]).map(describeWhere).join(", ")}`;
  if (key === "not") return describeWhere(part as Where);
  return outsideCondition(key, part as Condition);
}

function outsideCondition(id: string, part: Condition): string {
  if (!isSet(part) && "missing" in part) return describeCondition(id, { missing: !part.missing });
  const label = lowerFirst(conditionField(id)?.label ?? id);
  if (isSet(part)) return `${label} not ${part.map((value) => valueWords(value)).join(" or ")}`;
  const unit = conditionUnit(id);
  const behind = unit === null ? "" : ` ${unit}`;
  const { from, to } = part;
  const span = from === undefined ? `over ${to}` : to === undefined ? `under ${from}` : `outside ${from} to ${to}`;
  return `${label} ${span}${behind}, or not recorded`;
}

/** @example valueWords("magnetic-nail") // => "magnetic nail" */
export function valueWords(value: string | number | boolean | null): string {
  if (value === null) return "not recorded";
  if (typeof value === "boolean") return value ? "yes" : "no";
  return typeof value === "number" ? String(value) : wordsOfCode(value);
}
