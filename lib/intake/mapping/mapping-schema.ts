import * as z from "zod";
import { fieldOf, tableNames, tables } from "@/lib/codebook";
import { parseTarget } from "../match/parse-target";
import { sheetKinds } from "../match/sheet-kind";
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
  if (!result.success) throw fault(result.error.issues[0]?.path[0]);
  const mapping = { ...result.data, answers: withoutUndefined(result.data.answers) };
  if (Object.values(mapping.columns).some((id) => id !== null && !namesField(id))) throw fault("columns", "what is no field of a file");
  for (const [id, spellings] of Object.entries(mapping.values)) {
    const codes = codesOf(id);
    if (codes === null) throw fault("values", "what is no field of codes");
    if (codes.length > 0 && Object.values(spellings).some((code) => code !== "" && !codes.includes(code)))
      throw fault("values", "what is no code of its field");
  }
  return mapping;
}

// keys below the top are headers and spellings of a file: they aren't repeated
function fault(place: PropertyKey | undefined, received = "another shape"): TypeError {
  const where = typeof place === "string" && place in mappingSchema.shape ? place : "its top";
  return new TypeError(`parseMapping requires a mapping as the page of ids describes it, received ${received} at ${where}`);
}

function namesField(id: string): boolean {
  return sheetKinds.some((kind) => parseTarget(id, kind) !== null);
}

/** Codes of a field; none of its own for a field whose codes the unit lists; `null` when it has no codes. */
function codesOf(id: string): readonly string[] | null {
  const owner = tableNames.find((table) => Object.hasOwn(tables[table].fields, id));
  const field = owner ? fieldOf(owner, id) : null;
  if (field?.kind === "listed") return [];
  return field?.kind === "code" ? field.codes : null;
}

function withoutUndefined(record: Readonly<Record<string, string | undefined>>): Readonly<Record<string, string>> {
  return Object.fromEntries(Object.entries(record).filter((entry): entry is [string, string] => entry[1] !== undefined));
}
