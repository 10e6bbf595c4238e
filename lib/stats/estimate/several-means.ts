import { type GroupLabels, levelsOf } from "../cluster/groups";
import { cr2Difference } from "../cr2-difference";
import { cr2Mean } from "../cr2-mean";
import { holm } from "../holm";
import { htzWald } from "../htz-wald";
import type { Note } from "../notes";
import { permutationDifference } from "../permutation-difference";
import type { Estimate, PatientLabels } from "../record";
import { thresholds } from "../thresholds";
import { type Answer, type Asked, notesOnce, type TestAnswer } from "./answer";
import { sharedDenominator } from "./shared-denominator";

export interface SeveralMeansSituation extends Asked {
  readonly situation: "several-means";
  readonly values: readonly number[];
  readonly group: GroupLabels;
  readonly patient: PatientLabels;
  readonly gains?: readonly number[];
  readonly seed: number;
}

export type SeveralMeansAnswer = Answer<{
  readonly means: readonly { readonly label: string | number; readonly mean: Estimate }[];
  /** Each group minus all others taken together. */
  readonly againstOthers: readonly { readonly label: string | number; readonly difference: ReturnType<typeof cr2Difference> }[];
}>;

/** Three groups or more: each mean, and each against all others, by CR2. Test: HTZ over all groups; where it can't be had, permutation with Holm. */
export function estimateSeveralMeans(asked: SeveralMeansSituation): SeveralMeansAnswer {
  const { values, group, patient, gains, confidence = 0.95, test = false } = asked;
  const labels = levelsOf(group);
  if (labels.length < 3) throw new RangeError(`estimate requires at least three groups for several-means, received ${labels.length}`);
  const means = labels.map((label) => ({ label, mean: meanOf(asked, label, confidence) }));
  const againstOthers = labels.map((label) => {
    return { label, difference: cr2Difference({ values, patient, group: sidesOf(group, label), between: [own, others], confidence }) };
  });
  const few = means.filter(({ mean }) => (mean.patients as number) < thresholds.patientsForInterval);
  const fewNotes = few.flatMap(({ mean }) => mean.notes);
  const denominator = labels.map((label) => sharedDenominator(gains, sidesOf(group, label), [[own, others]]));
  return {
    lead: few.length === means.length ? "values" : "means",
    records: { means, againstOthers },
    test: test ? testOf(asked, labels) : null,
    notes: notesOnce(fewNotes, ...denominator),
  };
}

const own = "this group";
const others = "all others";

function sidesOf(group: GroupLabels, label: string | number): GroupLabels {
  return group.map((one) => (one === label ? own : others));
}

function meanOf({ values, group, patient }: SeveralMeansSituation, label: string | number, confidence: number): Estimate {
  const rows = group.flatMap((one, row) => (one === label ? [row] : []));
  return cr2Mean({
    values: rows.map((row) => values[row] as number),
    patient: rows.map((row) => patient[row] as string | number),
    confidence,
  });
}

function testOf(asked: SeveralMeansSituation, labels: readonly (string | number)[]): TestAnswer {
  const { values, group, patient } = asked;
  const design = group.map((one) => labels.slice(1).map((label) => (one === label ? 1 : 0)));
  const wald = htzWald({ values, patient, design, columns: labels.slice(1).map((_, j) => j) });
  return wald.p === null ? permuted(asked, labels, wald.notes) : wald;
}

function permuted(
  { values, group, patient, seed }: SeveralMeansSituation,
  labels: readonly (string | number)[],
  why: readonly Note[],
): TestAnswer {
  const method = "permutation of whole patients, each group against all others, the least p after Holm";
  if (labels.some((label) => inBoth(patient, sidesOf(group, label)))) return { p: null, method, notes: why };
  const tests = labels.map((label) =>
    permutationDifference({ values, patient, group: sidesOf(group, label), between: [own, others], seed }),
  );
  const ps = tests.flatMap(({ p }) => (p === null ? [] : [p]));
  const notes = notesOnce([{ code: "fallback-used", because: "too few patients for a Wald test" }], ...tests.map((one) => one.notes));
  return { p: ps.length < tests.length ? null : Math.min(...holm({ p: ps }).adjusted), method, notes };
}

function inBoth(patient: PatientLabels, sides: GroupLabels): boolean {
  const first = new Set(patient.filter((_, row) => sides[row] === own));
  return patient.some((label, row) => sides[row] === others && first.has(label));
}
