import * as z from "zod";
import { conditionField } from "./fields";
import { type Condition, groupKeys, type Where } from "./where";

/** A cohort that can't be read: what was wrong, for the page that says so. */
export class CohortError extends Error {
  override name = "CohortError";
}

const set = z.array(z.union([z.string(), z.number(), z.boolean(), z.null()])).min(1);
const range = z.strictObject({ from: z.number().optional(), to: z.number().optional() });
const missing = z.strictObject({ missing: z.boolean() });
const condition = z.union([set, range, missing]);

/** @throws CohortError when the text is no cohort */
export function parseWhere(text: string): Where {
  if (text.length > 20_000) throw new CohortError("a cohort requires at most 20 000 characters");
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    throw new CohortError("a cohort requires JSON, received something else");
  }
  return checkWhere(value);
}

/** @throws CohortError when the value is no cohort */
export function checkWhere(value: unknown, depth = 0): Where {
  if (typeof value !== "object" || value === null || Array.isArray(value)) throw new CohortError("a cohort requires an object");
  if (depth > 6) throw new CohortError("a cohort requires at most six levels");
  const checked: Record<string, Condition | readonly Where[] | Where> = {};
  for (const [key, part] of Object.entries(value))
    checked[key] = groupKeys.has(key) ? checkGroup(key, part, depth) : checkCondition(key, part);
  return checked;
}

function checkGroup(key: string, part: unknown, depth: number): readonly Where[] | Where {
  if (key === "not") return checkWhere(part, depth + 1);
  if (!Array.isArray(part) || part.length === 0) throw new CohortError(`${key} requires a list of cohorts`);
  return part.map((one) => checkWhere(one, depth + 1));
}

function checkCondition(id: string, part: unknown): Condition {
  const field = conditionField(id);
  if (!field) throw new CohortError("a condition requires a field of the codebook that a cohort can name, received another word");
  const parsed = condition.safeParse(part);
  if (!parsed.success) throw new CohortError(`${id} requires a list of values, a range {from, to} or {missing}`);
  const ranged = !Array.isArray(parsed.data) && !("missing" in parsed.data);
  if (ranged && field.kind !== "number" && field.kind !== "count")
    throw new CohortError(`${id} holds no numbers, so it requires a list of values`);
  if (Array.isArray(parsed.data) && field.kind === "code") {
    const codes: readonly (string | number | boolean | null)[] = field.codes;
    if (!parsed.data.every((value) => value === null || codes.includes(value)))
      throw new CohortError(`${id} requires codes among ${field.codes.join(", ")}`);
  }
  return parsed.data;
}
