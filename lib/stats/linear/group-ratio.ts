import { type GroupLabels, pairOf, rowsOfPair } from "../cluster/groups";
import { indexPatients } from "../cluster/patients";
import type { Note } from "../notes";
import type { PatientLabels } from "../record";
import { thresholds } from "../thresholds";
import { contrastEstimate } from "./contrast-estimate";
import { contrastOf, regression } from "./regression";

export interface GroupRatioInput {
  readonly values: readonly number[];
  readonly group: GroupLabels;
  readonly patient: PatientLabels;
  readonly exposure?: readonly number[];
  readonly between?: readonly [string | number, string | number] | undefined;
}

const nothing = { estimate: null, se: null, seLog: null, df: null, lower: null, upper: null, statistic: null, p: null } as const;

/**
 * Ratio of two group means (of counts over exposure) by the log link with CR2: estimate and limits are the exponentials, `seLog` the error of the log.
 * A group without any event has no ratio, fewer than three patients on a side no interval; a note says so.
 */
export function groupRatio(caller: string, input: GroupRatioInput, confidence: number) {
  const pair = pairOf(caller, input.group, input.between);
  const { rows, sides } = rowsOfPair(input.group, pair);
  const pick = <T>(column: readonly T[]) => rows.map((row) => column[row] as T);
  const [values, patient] = [pick(input.values), pick(input.patient)];
  const exposure = input.exposure ? pick(input.exposure) : undefined;
  const groups = pair.map((label, side) => sideOf(label, side, sides, values, patient, exposure));
  const common = { n: rows.length, patients: indexPatients(patient).count, groups };
  const fewest = Math.min(...groups.map(({ patients }) => patients));
  if (groups.some(({ sum }) => sum === 0)) return { ...common, ...nothing, notes: [because("a group has no event")] };
  const estimate = ((groups[0] as Side).sum * (groups[1] as Side).over) / ((groups[1] as Side).sum * (groups[0] as Side).over);
  if (fewest < thresholds.patientsForInterval) return { ...common, ...nothing, estimate, notes: [tooFew(fewest)] };
  const model = regression(caller, { values, patient, exposure, link: "log", design: Array.from(sides, (side) => [1 - side]) });
  const { se, lower, upper, ...rest } = contrastEstimate(
    model.fit,
    contrastOf(model, [0, 1]),
    model.coefficients[1] as number,
    1,
    confidence,
  );
  const raised = { lower: lower === null ? null : Math.exp(lower), upper: upper === null ? null : Math.exp(upper) };
  return { ...common, ...rest, ...raised, estimate, seLog: se, se: se === null ? null : se * estimate };
}

type Side = ReturnType<typeof sideOf>;

function sideOf(
  label: string | number,
  side: number,
  sides: Int32Array,
  values: readonly number[],
  patient: PatientLabels,
  exposure: readonly number[] | undefined,
) {
  const own = values.flatMap((_, i) => (sides[i] === side ? [i] : []));
  const sum = own.reduce((total, i) => total + (values[i] as number), 0);
  const over = own.reduce((total, i) => total + (exposure ? (exposure[i] as number) : 1), 0);
  return { label, sum, over, estimate: sum / over, n: own.length, patients: new Set(own.map((i) => patient[i])).size };
}

function because(reason: string): Note {
  return { code: "not-estimable", because: reason };
}

function tooFew(patients: number): Note {
  return { code: "too-few-for-interval", patients, needed: thresholds.patientsForInterval };
}
