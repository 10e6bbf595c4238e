import * as z from "zod";
import type { Mapping } from "../types";

const lengthUnits = ["mm", "cm", "m", "in"] as const;
const timeUnits = ["days", "weeks", "months", "years"] as const;
const answers = {
  "near-duplicate": ["same", "new"],
  "ids-differ-by-zeros": ["same", "different"],
  "premature-consolidation-or-slip": ["premature", "slip"],
  "implant-out-unhealed": ["planned", "infection", "breakage", "exchange", "intolerance", "other", "left-in-by-choice"],
  "blank-consolidation": ["not-yet", "not-recorded"],
} as const;
export type AnswerCode = keyof typeof answers;

/** The answers that settle a finding for all rows, by its code. */
export const answersOf: Readonly<Record<AnswerCode, readonly string[]>> = answers;

/** A saved mapping (ids.md §11). Nothing of a row stands in it. */
export const mappingSchema = z.strictObject({
  columns: z.record(z.string().max(200), z.string().max(60).nullable()).default({}),
  units: z.record(z.string().max(200), z.enum([...lengthUnits, ...timeUnits])).default({}),
  dates: z.enum(["dmy", "mdy", "ymd"]).nullable().default(null),
  decimal: z.enum([",", "."]).nullable().default(null),
  values: z.record(z.string().max(60), z.record(z.string().max(200), z.string().max(60))).default({}),
  answers: z
    .strictObject({
      "near-duplicate": z.enum(answers["near-duplicate"]).optional(),
      "ids-differ-by-zeros": z.enum(answers["ids-differ-by-zeros"]).optional(),
      "premature-consolidation-or-slip": z.enum(answers["premature-consolidation-or-slip"]).optional(),
      "implant-out-unhealed": z.enum(answers["implant-out-unhealed"]).optional(),
      "blank-consolidation": z.enum(answers["blank-consolidation"]).optional(),
    })
    .default({}),
});

/**
 * A mapping from JSON of unknown shape.
 * @throws TypeError naming the place that is wrong, never what stands there
 */
export function parseMapping(json: unknown): Mapping {
  const result = mappingSchema.safeParse(json);
  if (result.success) return { ...result.data, answers: withoutUndefined(result.data.answers) };
  const [issue] = result.error.issues;
  throw new TypeError(
    `parseMapping requires a mapping as the page of ids describes it, received a fault at ${issue?.path.join(".") || "its top"} (${issue?.code ?? "unknown"})`,
  );
}

function withoutUndefined(record: Readonly<Record<string, string | undefined>>): Readonly<Record<string, string>> {
  return Object.fromEntries(Object.entries(record).filter((entry): entry is [string, string] => entry[1] !== undefined));
}
