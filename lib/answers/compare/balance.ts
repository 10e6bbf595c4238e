import { fieldOf } from "@/lib/codebook";
import { standardisedDifference } from "@/lib/stats";
import type { Case } from "../frames/cases";

/** Case mix that was there before the comparison: never an outcome, never what treatment decided on the way. */
export const caseMixFields = [
  "ageAtSurgeryYears",
  "sex",
  "indication",
  "aetiology",
  "smoking",
  "diabetes",
  "vitaminDDeficiency",
  "growthPlates",
  "bone",
  "plannedGainMm",
  "boneLengthBeforeMm",
  "osteotomySite",
  "device",
] as const;

export type Balance = {
  readonly field: string;
  /** Standardised difference, first group less second; of codes without a sign. `null`: nothing varies, or nothing is recorded. */
  readonly smd: number | null;
  readonly recorded: readonly [a: number, b: number];
};

const personFields: ReadonlySet<string> = new Set(["sex", "indication", "aetiology", "smoking", "diabetes", "vitaminDDeficiency"]);

/** How unlike two groups were to begin with, field by field, over what is recorded; fields of the person count each person once. */
export function balanceOf(a: readonly Case[], b: readonly Case[]): readonly Balance[] {
  return caseMixFields.map((field) => {
    const [left, right] = [valuesOf(a, field), valuesOf(b, field)];
    return { field, smd: smdOf(left, right), recorded: [left.length, right.length] as const };
  });
}

function valuesOf(cases: readonly Case[], field: string): (string | number | boolean)[] {
  const seen = new Set<number>();
  const values: (string | number | boolean)[] = [];
  for (const { segment, look } of cases) {
    if (personFields.has(field) && seen.has(segment.person)) continue;
    seen.add(segment.person);
    const value = look(field);
    if (value !== null) values.push(value);
  }
  return values;
}

function smdOf(a: readonly (string | number | boolean)[], b: readonly (string | number | boolean)[]): number | null {
  if (a.length === 0 || b.length === 0) return null;
  const group = [...a.map(() => "a"), ...b.map(() => "b")];
  const values = [...a, ...b];
  if (values.every((value) => typeof value === "number"))
    return standardisedDifference({ kind: "continuous", values, group, between: ["a", "b"] }).estimate;
  if (values.every((value) => typeof value === "boolean"))
    return standardisedDifference({ kind: "binary", values: values.map(Number), group, between: ["a", "b"] }).estimate;
  return standardisedDifference({ kind: "levels", values: values.map(String), group, between: ["a", "b"] }).estimate;
}

/** Whether a covariate is known only after the clock's start: it may be an effect of what is compared. */
export function isKnownLater(field: string): boolean {
  for (const table of ["segment", "person"] as const) {
    try {
      const { known } = fieldOf(table, field);
      return known !== "before" && known !== "operation";
    } catch {}
  }
  return false;
}
