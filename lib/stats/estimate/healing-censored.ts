import { countPatients, indexPatients, rowsOfPatients } from "../cluster/patients";
import { type KaplanMeier, kaplanMeier } from "../kaplan-meier";
import type { Note } from "../notes";
import { permutationDifference } from "../permutation-difference";
import { bootstrapReplicates, percentileInterval } from "../resample/bootstrap";
import { logNormalScores } from "../survival/log-normal-scores";
import type { SpanRows } from "../survival/require-spans";
import { thresholds } from "../thresholds";
import { type TimeCoefficient, type TimeModel, timeModel } from "../time-model";
import { notesOnce, type TestAnswer } from "./answer";
import { dependsOnGain, sharesPatients, type TimeRatio } from "./healing-at-equal-gain";
import { type HealingRows, healingDesign } from "./healing-rows";

export interface CensoredHealing {
  readonly ratio: TimeRatio | null;
  readonly model: TimeModel | null;
  readonly curves: readonly { readonly label: string | number; readonly curve: KaplanMeier }[];
  readonly notes: readonly Note[];
}

/** Resamples of the time model: each is a fit of its own. */
const repeats = 1999;

/** Log-normal time model with the unhealed in; limits by patient, resampled below twenty. When it can't be fitted: curves only. */
export function censoredHealing(rows: HealingRows, confidence: number, seed: number): CensoredHealing {
  const curves = rows.pair.map((label) => ({ label, curve: curveOf(rows, label, confidence) }));
  const model = fitted(rows, confidence);
  if (model instanceof RangeError) {
    return { ratio: null, model: null, curves, notes: [{ code: "fallback-used", because: "the time model can’t be fitted, curves only" }] };
  }
  const group = model.coefficients[2] as TimeCoefficient;
  const few = countPatients(rows.patient) < thresholds.patientsForBootstrap;
  const limits = few ? resampledRatio(rows, confidence, seed) : { lower: group.timeRatioLower, upper: group.timeRatioUpper };
  const ratio: TimeRatio = {
    estimate: group.timeRatio,
    lower: limits.lower,
    upper: limits.upper,
    method: few ? `time ratio, log-normal time model, patient bootstrap (${repeats})` : `time ratio, ${model.method}`,
  };
  const unknown: readonly Note[] =
    few && limits.lower === null ? [{ code: "not-estimable", because: "too many resamples have no fit" }] : [];
  const beta = model.coefficients[1] as TimeCoefficient;
  return { ratio, model, curves, notes: notesOnce([{ code: "log-normal" }], model.notes, unknown, dependsOnGain(beta)) };
}

function spansOfRows({ days, healed, lastUnhealed }: HealingRows): SpanRows {
  if (!lastUnhealed) return { times: days, event: healed };
  return {
    after: days.map((day, i) => (healed[i] === 1 ? (lastUnhealed[i] as number) : day)),
    by: days.map((day, i) => (healed[i] === 1 ? day : null)),
  };
}

/** A fit that has no summit is an answer here, not a mistake of the caller. */
function fitted(rows: HealingRows, confidence: number): TimeModel | RangeError {
  try {
    const names = ["log cm", "group", ...rows.names];
    return timeModel({ ...spansOfRows(rows), patient: rows.patient, design: healingDesign(rows, true), names, confidence });
  } catch (error) {
    if (error instanceof RangeError) return error;
    throw error;
  }
}

function curveOf(rows: HealingRows, label: string | number, confidence: number): KaplanMeier {
  const keep = <T>(values: readonly T[]) => values.filter((_, row) => rows.group[row] === label);
  return kaplanMeier({ times: keep(rows.days), event: keep(rows.healed), patient: keep(rows.patient), confidence });
}

function resampledRatio(rows: HealingRows, confidence: number, seed: number) {
  const index = indexPatients(rows.patient);
  const ofPatient = rowsOfPatients(index);
  const logRatio = (timesDrawn: Int32Array) => {
    const drawn = Array.from(timesDrawn).flatMap((times, code) =>
      Array.from({ length: times }, () => Array.from(ofPatient[code] as Int32Array)).flat(),
    );
    const model = fitted(drawnRows(rows, drawn), confidence);
    return model instanceof RangeError ? null : (model.coefficients[2] as TimeCoefficient).estimate;
  };
  const { lower, upper } = percentileInterval(
    bootstrapReplicates({ patients: index.count, repeats, seed, statistic: logRatio }),
    confidence,
  );
  return { lower: lower === null ? null : Math.exp(lower), upper: upper === null ? null : Math.exp(upper) };
}

function drawnRows(rows: HealingRows, drawn: readonly number[]): HealingRows {
  const pick = <T>(values: readonly T[]) => drawn.map((row) => values[row] as T);
  return {
    ...rows,
    days: pick(rows.days),
    healed: pick(rows.healed),
    lastUnhealed: rows.lastUnhealed && pick(rows.lastUnhealed),
    gainCm: pick(rows.gainCm),
    first: pick(rows.first),
    group: pick(rows.group),
    patient: pick(rows.patient),
    extra: pick(rows.extra),
  };
}

/** Patients permuted on the scores of the model without groups. */
export function censoredHealingTest(rows: HealingRows, seed: number): TestAnswer {
  const method = "permutation of whole patients on the scores of the log-normal time model";
  if (sharesPatients(rows)) return { p: null, method, notes: [{ code: "not-estimable", because: "patients are in both groups" }] };
  const scores = Array.from(logNormalScores("estimate", { ...spansOfRows(rows), design: healingDesign(rows, false) }));
  return { ...permutationDifference({ values: scores, group: rows.group, patient: rows.patient, between: rows.pair, seed }), method };
}
