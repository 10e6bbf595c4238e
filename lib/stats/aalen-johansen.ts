import { normalQuantile } from "./distributions";
import type { Note } from "./notes";
import type { Estimate } from "./record";
import { requireConfidence, requireCount, requirePositive } from "./require";
import { type LimitScale, limitScales, limitsOfShare } from "./survival/curve-limits";
import { incidenceBootstrap } from "./survival/incidence-bootstrap";
import { eventsOfCause, type IncidenceInput, incidenceAtSteps, incidenceErrors } from "./survival/incidence-curve";
import { patientsOf } from "./survival/patients-of";
import { requireTimeRows, type TimeRows } from "./survival/require-rows";
import { riskSteps } from "./survival/risk-steps";
import { survivalAtSteps } from "./survival/survival-curve";
import { thresholds } from "./thresholds";

/** One cause as columns, one entry a step of the curve. */
export interface CauseCurve {
  readonly cause: number;
  readonly events: readonly number[];
  readonly incidence: readonly number[];
  readonly se: readonly (number | null)[];
  readonly lower: readonly (number | null)[];
  readonly upper: readonly (number | null)[];
}

/** `estimate`, `se`, `lower`, `upper`: the incidence of `cause` by the time `at`. */
export interface AalenJohansen extends Estimate {
  readonly cause: number;
  readonly at: number;
  readonly time: readonly number[];
  readonly atRisk: readonly number[];
  readonly censored: readonly number[];
  /** Share without any event. */
  readonly free: readonly number[];
  readonly causes: readonly CauseCurve[];
}

export interface AalenJohansenInput extends TimeRows {
  readonly cause?: number;
  /** The last time unless said. */
  readonly at?: number | undefined;
  readonly confidence?: number;
  readonly limits?: LimitScale;
  readonly variance?: "jackknife" | "bootstrap";
  readonly replicates?: number;
  /** Required for the bootstrap. */
  readonly seed?: number | undefined;
}

/**
 * Cumulative incidence of events that exclude each other (`event` 1, 2, … names the cause, 0 is censored), errors by patient.
 * Jackknife: infinitesimal, R's influence of each row summed by patient; bootstrap: patients drawn with replacement, percentile limits, from 20 patients.
 * Aalen, Johansen 1978, Scand J Stat 5:141-150.
 * @throws RangeError, TypeError when the rows are not as `TimeRows` says, or the bootstrap has no seed
 * @example aalenJohansen({ times: [1, 2, 3, 4], event: [1, 2, 1, 0] }).estimate // => 0.5
 */
export function aalenJohansen(input: AalenJohansenInput): AalenJohansen {
  const { cause = 1, at, confidence = 0.95, limits = "log-log", variance = "jackknife", replicates = 1999, seed, ...rows } = input;
  const count = countCauses(rows, cause);
  requireConfidence("aalenJohansen", confidence);
  if (!limitScales.includes(limits)) throw new RangeError(`aalenJohansen requires limits ${limitScales.join(", ")}, received another`);
  if (at !== undefined) requirePositive("aalenJohansen", "at", at);
  const steps = riskSteps(rows);
  const patients = patientsOf(rows.patient, rows.times.length);
  const data: IncidenceInput = { steps, survival: survivalAtSteps(steps), event: rows.event, patients };
  const needed = variance === "bootstrap" ? thresholds.patientsForBootstrap : thresholds.patientsForInterval;
  const spread =
    patients.count < needed
      ? none
      : variance === "bootstrap"
        ? bootstrapped({ confidence, replicates, seed })
        : jackknifed(confidence, limits);
  const causes = Array.from({ length: count }, (_, i) => causeCurve(data, i + 1, spread));
  const time = Array.from(steps.time);
  const place = at ?? (time.at(-1) as number);
  return {
    ...valueAt(causes[cause - 1] as CauseCurve, time, place, data.survival.at(-1) === 0),
    df: null,
    cause,
    at: place,
    n: rows.times.length,
    patients: rows.patient ? patients.count : null,
    time,
    atRisk: Array.from(steps.atRisk),
    censored: Array.from(steps.censored),
    free: Array.from(data.survival),
    causes,
    method: `Aalen–Johansen, ${variance === "bootstrap" ? `patient bootstrap (${replicates}), percentile limits` : `infinitesimal jackknife${rows.patient ? " by patient" : ""}, ${limits} limits`}`,
    convention: "all events before censorings of the same time",
    notes: notesOf(patients.count, needed),
  };
}

/** More would be a column of something else. */
const mostCauses = 100;

function countCauses(rows: TimeRows, cause: number): number {
  requireCount("aalenJohansen", "cause", cause, 1);
  requireTimeRows("aalenJohansen", rows, mostCauses);
  let most = cause;
  for (let i = 0; i < rows.event.length; i++) most = Math.max(most, rows.event[i] as number);
  return most;
}

type Spread = (
  data: IncidenceInput,
  cause: number,
) => {
  readonly se: ArrayLike<number | null>;
  readonly lower: ArrayLike<number | null>;
  readonly upper: ArrayLike<number | null>;
};

const none: Spread = ({ steps }) => {
  const empty = new Array<null>(steps.time.length).fill(null);
  return { se: empty, lower: empty, upper: empty };
};

function jackknifed(confidence: number, scale: LimitScale): Spread {
  const z = normalQuantile(0.5 + confidence / 2);
  return (data, cause) => {
    const se = incidenceErrors(data, cause);
    const incidence = incidenceAtSteps(data.steps, data.survival, eventsOfCause(data.steps, data.event, cause));
    const pairs = Array.from(incidence, (share, step) => limitsOfIncidence(share, se[step] as number, z, scale));
    return { se, lower: pairs.map(([low]) => low), upper: pairs.map(([, high]) => high) };
  };
}

/** Zero before the first event of the cause; at exactly one, where the error carries nothing, no limits. */
function limitsOfIncidence(share: number, se: number, z: number, scale: LimitScale): readonly [number | null, number | null] {
  if (share === 0) return [0, 0];
  return share < 1 ? limitsOfShare(share, se, z, scale) : [null, null];
}

function bootstrapped({ confidence, replicates, seed }: { confidence: number; replicates: number; seed: number | undefined }): Spread {
  if (seed === undefined) throw new RangeError("aalenJohansen requires a seed for the bootstrap, received none");
  requireCount("aalenJohansen", "replicates", replicates, 99);
  return (data, cause) => incidenceBootstrap(data, cause, { confidence, replicates, seed });
}

function causeCurve(data: IncidenceInput, cause: number, spread: Spread): CauseCurve {
  const events = eventsOfCause(data.steps, data.event, cause);
  const { se, lower, upper } = spread(data, cause);
  return {
    cause,
    events: Array.from(events),
    incidence: Array.from(incidenceAtSteps(data.steps, data.survival, events)),
    se: Array.from(se),
    lower: Array.from(lower),
    upper: Array.from(upper),
  };
}

/** The curve at a time: what it came to at the last step not after it. Beyond the last step it is known only when nobody is left. */
function valueAt({ incidence, se, lower, upper }: CauseCurve, time: readonly number[], at: number, closed: boolean) {
  const last = time.length - 1;
  if (at > (time[last] as number) && !closed) return { estimate: null, se: null, lower: null, upper: null };
  const step = time.findLastIndex((one) => one <= at);
  if (step < 0) return { estimate: 0, se: 0, lower: 0, upper: 0 };
  return { estimate: incidence[step] ?? null, se: se[step] ?? null, lower: lower[step] ?? null, upper: upper[step] ?? null };
}

function notesOf(patients: number, needed: number): readonly Note[] {
  return patients < needed ? [{ code: "too-few-for-interval", patients, needed }] : [];
}
