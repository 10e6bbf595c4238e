import { conditionField, conditionUnit } from "@/lib/cohorts";
import { meanOf, sampleDeviation, standardisedDifference, thresholds } from "@/lib/stats";
import type { Case } from "../frames/cases";
import { isKnownAfter } from "../healing/landmark";

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

type Recorded = string | number | boolean;
/** What a group is like in a field: mean and standard deviation of numbers, the commonest value of all others with its share. */
export type Likeness =
  | { readonly kind: "number"; readonly mean: number; readonly deviation: number | null; readonly unit: string | null }
  | { readonly kind: "value"; readonly value: Recorded; readonly share: number };

export type Balance = {
  readonly field: string;
  readonly label: string;
  /** Standardised difference, first group less second; of codes without a sign. `null`: nothing varies, nothing is recorded, or a group has too few patients. */
  readonly smd: number | null;
  readonly recorded: readonly [a: number, b: number];
  /** `null` where nothing is recorded. */
  readonly like: readonly [a: Likeness | null, b: Likeness | null];
};

const personFields: ReadonlySet<string> = new Set(["sex", "indication", "aetiology", "smoking", "diabetes", "vitaminDDeficiency"]);

/**
 * How unlike two groups were to begin with, field by field, over what is recorded; fields of the person count each person once.
 * Of one or two patients the spread, by which a difference is measured, is chance: no difference is given.
 */
export function balanceOf(a: readonly Case[], b: readonly Case[]): readonly Balance[] {
  const enough = [a, b].every((cases) => new Set(cases.map(({ segment }) => segment.person)).size >= thresholds.patientsForInterval);
  return caseMixFields.map((field) => {
    const [left, right] = [valuesOf(a, field), valuesOf(b, field)];
    const label = conditionField(field)?.label ?? field;
    const like = [likenessOf(field, left), likenessOf(field, right)] as const;
    return { field, label, smd: enough ? smdOf(left, right) : null, recorded: [left.length, right.length] as const, like };
  });
}

export type SeveralBalance = Pick<Balance, "field" | "label"> & {
  /** The largest standardised difference between any two of the groups, without a sign. `null`: as of two groups. */
  readonly smd: number | null;
  /** A count and a likeness for each group, in their order. */
  readonly recorded: readonly number[];
  readonly like: readonly (Likeness | null)[];
};

/** How unlike three groups or more were to begin with: of each field the two groups that are furthest apart; `split` parts them, and is left out. */
export function balanceOfSeveral(groups: readonly (readonly Case[])[], split: string): readonly SeveralBalance[] {
  const pairs = groups.flatMap((a, i) => groups.slice(i + 1).map((b) => balanceOf(a, b)));
  return caseMixFields.flatMap((field, place) => {
    if (field === split) return [];
    const known = pairs.flatMap((pair) => pair[place]?.smd ?? []).map(Math.abs);
    const values = groups.map((cases) => valuesOf(cases, field));
    return {
      field,
      label: conditionField(field)?.label ?? field,
      smd: known.length === 0 ? null : Math.max(...known),
      recorded: values.map(({ length }) => length),
      like: values.map((own) => likenessOf(field, own)),
    };
  });
}

function valuesOf(cases: readonly Case[], field: string): Recorded[] {
  const seen = new Set<number>();
  const values: Recorded[] = [];
  for (const { segment, look } of cases) {
    if (personFields.has(field) && seen.has(segment.person)) continue;
    seen.add(segment.person);
    const value = look(field);
    if (value !== null) values.push(value);
  }
  return values;
}

function likenessOf(field: string, values: readonly Recorded[]): Likeness | null {
  const numbers = values.filter((value) => typeof value === "number");
  if (values.length === 0) return null;
  if (numbers.length === values.length) {
    return { kind: "number", mean: meanOf(numbers) ?? 0, deviation: sampleDeviation(numbers), unit: conditionUnit(field) };
  }
  const counts = new Map<Recorded, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  const [commonest] = [...counts].sort(([, a], [, b]) => b - a);
  return commonest ? { kind: "value", value: commonest[0], share: commonest[1] / values.length } : null;
}

function smdOf(a: readonly Recorded[], b: readonly Recorded[]): number | null {
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
  return isKnownAfter(field, { from: "surgery" });
}
