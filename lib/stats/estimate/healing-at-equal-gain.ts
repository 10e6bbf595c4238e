import { type Coefficient, cr2Regression, type RegressionRecord } from "../cr2-regression";
import type { Note } from "../notes";
import { permutationDifference } from "../permutation-difference";
import { thresholds } from "../thresholds";
import { notesOnce, type TestAnswer } from "./answer";
import { type HealingRows, healedOnly, healingDesign } from "./healing-rows";

/** First group's time over the second's at equal gain. */
export interface TimeRatio {
  readonly estimate: number;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly method: string;
}

export interface EqualGain {
  readonly ratio: TimeRatio;
  readonly model: RegressionRecord;
  /** Of log(days) on log(cm): 1 when days are proportional to gain. */
  readonly beta: Coefficient;
  /** days = fixedDays + daysPerCm · cm, both groups together. */
  readonly fixedDays: Coefficient;
  readonly daysPerCm: Coefficient;
  readonly notes: readonly Note[];
}

/** log(days) = α + β·log(cm) + group + covariates over the healed, CR2; days = a + b·cm beside it. */
export function equalGain(all: HealingRows, confidence: number): EqualGain {
  const rows = healedOnly(all);
  const values = rows.days.map(Math.log);
  const names = ["log cm", "group", ...rows.names];
  const model = cr2Regression({ values, patient: rows.patient, design: healingDesign(rows, true), names, confidence });
  const straight = cr2Regression({
    values: rows.days,
    patient: rows.patient,
    design: rows.gainCm.map((cm) => [cm]),
    names: ["cm"],
    confidence,
  });
  const [beta, group] = [model.coefficients[1] as Coefficient, model.coefficients[2] as Coefficient];
  const unhealed = all.days.length - rows.days.length;
  const left: readonly Note[] = unhealed > 0 ? [{ code: "unhealed-left-out", unhealed, n: all.days.length }] : [];
  return {
    ratio: {
      estimate: Math.exp(group.estimate),
      lower: group.lower === null ? null : Math.exp(group.lower),
      upper: group.upper === null ? null : Math.exp(group.upper),
      method: `ratio of days at equal gain, ${model.method}`,
    },
    model,
    beta,
    fixedDays: straight.coefficients[0] as Coefficient,
    daysPerCm: straight.coefficients[1] as Coefficient,
    notes: notesOnce(model.notes, group.notes, left, dependsOnGain(beta)),
  };
}

/** Days aren't proportional to gain when the interval of β leaves out 1. */
export function dependsOnGain({ lower, upper }: { readonly lower: number | null; readonly upper: number | null }): readonly Note[] {
  return lower !== null && upper !== null && (lower > 1 || upper < 1) ? [{ code: "index-depends-on-gain" }] : [];
}

/** t of the group's coefficient; with df below four the patients are permuted, on what the model without groups leaves over. */
export function equalGainTest({ model }: EqualGain, all: HealingRows, seed: number): TestAnswer {
  const group = model.coefficients[2] as Coefficient;
  if (group.df !== null && group.df >= thresholds.dfForSegmentMean) {
    return { p: group.p, method: model.method, notes: group.notes };
  }
  const rows = healedOnly(all);
  if (sharesPatients(rows))
    return { p: null, method: model.method, notes: [{ code: "not-estimable", because: "patients are in both groups" }] };
  const design = healingDesign(rows, false);
  const reduced = cr2Regression({ values: rows.days.map(Math.log), patient: rows.patient, design });
  const residuals = rows.days.map((days, i) => {
    const fitted = [1, ...(design[i] as number[])].reduce((sum, x, j) => sum + x * (reduced.coefficients[j] as Coefficient).estimate, 0);
    return Math.log(days) - fitted;
  });
  const test = permutationDifference({ values: residuals, group: rows.group, patient: rows.patient, between: rows.pair, seed });
  return { ...test, notes: notesOnce([{ code: "fallback-used", because: "few patients" }], test.notes) };
}

export function sharesPatients({ patient, first }: Pick<HealingRows, "patient" | "first">): boolean {
  const inFirst = new Set(patient.filter((_, row) => first[row] === 1));
  return patient.some((label, row) => first[row] === 0 && inFirst.has(label));
}
