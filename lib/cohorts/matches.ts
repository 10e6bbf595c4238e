import type { Value } from "@/lib/codebook";
import { type Condition, isSet, type Where } from "./where";

/** Reads a field of one segment (or of its person) as plain value; `null`: not recorded. */
export type Look = (field: string) => Value;

/** Whether a segment is in the cohort. An empty cohort holds everything. */
export function matches(where: Where, look: Look): boolean {
  for (const [key, part] of Object.entries(where)) {
    if (part === undefined) continue;
    if (!holds(key, part, look)) return false;
  }
  return true;
}

function holds(key: string, part: Condition | readonly Where[] | Where, look: Look): boolean {
  if (key === "any") return (part as readonly Where[]).some((inner) => matches(inner, look));
  if (key === "all") return (part as readonly Where[]).every((inner) => matches(inner, look));
  if (key === "not") return !matches(part as Where, look);
  return meets(part as Condition, look(key));
}

function meets(part: Condition, value: Value): boolean {
  if (isSet(part)) return part.includes(value);
  if ("missing" in part) return (value === null) === part.missing;
  if (typeof value !== "number") return false;
  return (part.from === undefined || value >= part.from) && (part.to === undefined || value <= part.to);
}
