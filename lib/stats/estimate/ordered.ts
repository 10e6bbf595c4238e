import { type GroupLabels, levelsOf } from "../cluster/groups";
import { countPatients, indexPatients } from "../cluster/patients";
import { permutationDifference } from "../permutation-difference";
import type { PatientLabels } from "../record";
import { requireSameLength, requireSome } from "../require";
import { thresholds } from "../thresholds";
import { weightedKappa } from "../weighted-kappa";
import { type Answer, type Asked, type TestAnswer, tooFew } from "./answer";

export interface OrderedClassSituation extends Asked {
  readonly situation: "ordered-class";
  /** Class of each row as its number in rising order, from 0. */
  readonly classes: readonly number[];
  readonly classCount: number;
  readonly patient: PatientLabels;
  readonly group?: GroupLabels;
  readonly seed: number;
}

export interface WorstClasses {
  readonly label: string | number;
  readonly patients: number;
  /** Patients by their worst class. */
  readonly counts: readonly number[];
}

export type OrderedClassAnswer = Answer<{ readonly worst: readonly WorstClasses[] }>;

/** The worst class of each patient in each group; groups compared by permuting patients on the number of their worst class. */
export function estimateOrderedClass({
  classes,
  classCount,
  patient,
  group,
  seed,
  test = false,
}: OrderedClassSituation): OrderedClassAnswer {
  requireSome("estimate", "row", classes.length);
  requireSameLength("estimate", "classes", classes.length, "patient", patient.length);
  const bad = classes.findIndex((one) => !Number.isInteger(one) || one < 0 || one >= classCount);
  if (bad >= 0) throw new RangeError(`estimate requires classes numbered 0 to ${classCount - 1}, received ${classes[bad]} at ${bad}`);
  const labels = group ?? classes.map(() => "all");
  requireSameLength("estimate", "classes", classes.length, "group", labels.length);
  const worst = levelsOf(labels).map((label) => {
    const own = worstOf(classes, patient, labels, label);
    return {
      label,
      patients: own.length,
      counts: Array.from({ length: classCount }, (_, one) => own.filter((value) => value === one).length),
    };
  });
  return {
    lead: "worst",
    records: { worst },
    test: test && worst.length > 1 ? trendTest(classes, patient, labels, seed) : null,
    notes: [],
  };
}

function worstOf(classes: readonly number[], patient: PatientLabels, group: GroupLabels, label: string | number): readonly number[] {
  const rows = group.flatMap((one, row) => (one === label ? [row] : []));
  const { codes, count } = indexPatients(rows.map((row) => patient[row] as string | number));
  const worst = new Array<number>(count).fill(0);
  rows.forEach((row, i) => {
    const code = codes[i] as number;
    worst[code] = Math.max(worst[code] as number, classes[row] as number);
  });
  return worst;
}

/** A trend needs two groups, and whole patients in one of them. */
function trendTest(classes: readonly number[], patient: PatientLabels, group: GroupLabels, seed: number): TestAnswer {
  const method = "permuted trend of the worst class, whole patients";
  const labels = levelsOf(group);
  const parts = labels.map((label) => worstOf(classes, patient, group, label));
  const total = parts.reduce((sum, part) => sum + part.length, 0);
  const because = labels.length > 2 ? "more than two groups" : total > countPatients(patient) ? "patients are in both groups" : null;
  if (because !== null) return { p: null, method, notes: [{ code: "not-estimable", because }] };
  const values = parts.flat();
  const sides = parts.flatMap((part, i) => part.map(() => i));
  return { ...permutationDifference({ values, group: sides, patient: values.map((_, i) => i), seed }), method };
}

export interface AgreementSituation extends Asked {
  readonly situation: "agreement";
  readonly first: readonly number[];
  readonly second: readonly number[];
  readonly classCount: number;
  readonly patient: PatientLabels;
  readonly seed: number;
}

export type AgreementAnswer = Answer<{ readonly kappa: ReturnType<typeof weightedKappa> }>;

/** Weighted kappa with its cross-table, from which prevalence is read; below twenty patients the table leads and there is no interval. */
export function estimateAgreement({ first, second, classCount, patient, seed, confidence = 0.95 }: AgreementSituation): AgreementAnswer {
  const kappa = weightedKappa({ first, second, patient, classes: classCount, seed, confidence });
  const few = (kappa.patients as number) < thresholds.patientsForBootstrap;
  const notes = few ? [tooFew(kappa.patients as number, thresholds.patientsForBootstrap)] : kappa.notes;
  return { lead: few ? "values" : "kappa", records: { kappa }, test: null, notes };
}
