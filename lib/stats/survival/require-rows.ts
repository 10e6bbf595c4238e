import type { PatientLabels } from "../record";
import { requireFinite, requireSameLength, requireSome } from "../require";

/** One row a segment: the time it was followed to, what happened then (0 nothing: censored), and from when it was under observation. */
export interface TimeRows {
  readonly times: ArrayLike<number>;
  /** 0 censored; 1 the event; with competing events 1, 2, … name the cause. */
  readonly event: ArrayLike<number>;
  /** Delayed entry: under observation from after this time. */
  readonly entry?: ArrayLike<number> | undefined;
  readonly patient?: PatientLabels | undefined;
}

/** Relative distance within which two times are the same time: dates that went through arithmetic must still tie. */
export const tieTolerance = 1e-9;

/**
 * @throws RangeError without rows, with unlike lengths, times below zero, an event code above `causes`, or an entry not before its time;
 *   TypeError when a time or event is not a finite number
 */
export function requireTimeRows(caller: string, rows: TimeRows, causes = 1): void {
  const { times, event, entry, patient } = rows;
  requireSome(caller, "row", times.length);
  requireSameLength(caller, "times", times.length, "event", event.length);
  requireFinite(caller, "times", times);
  requireFinite(caller, "event", event);
  for (let i = 0; i < times.length; i++) {
    if ((times[i] as number) < 0) throw new RangeError(`${caller} requires times of zero or above, received ${times[i]} at ${i}`);
    requireCode(caller, event[i] as number, causes, i);
  }
  if (patient) requireSameLength(caller, "times", times.length, "patient", patient.length);
  if (entry) requireEntries(caller, times, entry);
}

function requireCode(caller: string, code: number, causes: number, at: number): void {
  if (Number.isInteger(code) && code >= 0 && code <= causes) return;
  throw new RangeError(`${caller} requires event codes from 0 to ${causes}, received ${code} at ${at}`);
}

function requireEntries(caller: string, times: ArrayLike<number>, entry: ArrayLike<number>): void {
  requireSameLength(caller, "times", times.length, "entry", entry.length);
  requireFinite(caller, "entry", entry);
  for (let i = 0; i < times.length; i++) {
    const [from, until] = [entry[i] as number, times[i] as number];
    if (!(from >= 0 && from < until * (1 - tieTolerance))) {
      throw new RangeError(`${caller} requires an entry from zero to before its time (${until}), received ${from} at ${i}`);
    }
  }
}
