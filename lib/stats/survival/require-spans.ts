import type { PatientLabels } from "../record";
import { requireSameLength, requireSome } from "../require";
import { requireTimeRows } from "./require-rows";

/**
 * When each event happened, as far as it is known. Either `times` with `event` (1 at that time, 0 not yet by then),
 * or `after` and `by`: not yet on `after`, happened by `by`; `by` null is not yet, equal values are an exact time, `after` 0 is any time before `by`.
 */
export interface SpanRows {
  readonly times?: ArrayLike<number>;
  readonly event?: ArrayLike<number>;
  readonly after?: ArrayLike<number>;
  readonly by?: ArrayLike<number | null>;
  readonly patient?: PatientLabels | undefined;
}

/** The same in one form: `by` is Infinity when the event had not happened. */
export interface Spans {
  readonly after: Float64Array;
  readonly by: Float64Array;
}

/** @throws RangeError, TypeError when rows are missing, unlike in length, below zero, not numbers, or end before they begin */
export function spansOf(caller: string, rows: SpanRows): Spans {
  const { times, event, after, by, patient } = rows;
  if (times && event && !after && !by) {
    requireTimeRows(caller, { times, event, patient });
    return { after: Float64Array.from(times), by: Float64Array.from(times).map((time, row) => (event[row] ? time : Infinity)) };
  }
  if (!after || !by || times || event)
    throw new TypeError(`${caller} requires times with event, or after with by, received neither pair alone`);
  requireSome(caller, "row", after.length);
  requireSameLength(caller, "after", after.length, "by", by.length);
  if (patient) requireSameLength(caller, "after", after.length, "patient", patient.length);
  for (let i = 0; i < after.length; i++) requireSpan(caller, after[i], by[i], i);
  return { after: Float64Array.from(after), by: Float64Array.from(by, (time) => time ?? Infinity) };
}

function requireSpan(caller: string, after: unknown, by: unknown, at: number): void {
  if (typeof after !== "number" || !(after >= 0 && after < Infinity)) {
    throw new RangeError(`${caller} requires after to be a time of zero or above, received ${shown(after)} at ${at}`);
  }
  if (by !== null && !(typeof by === "number" && by >= after && by < Infinity)) {
    throw new RangeError(`${caller} requires by to be null or not before after (${after}), received ${shown(by)} at ${at}`);
  }
}

/** Anything but a number is described: a text may hold a name. */
function shown(value: unknown): string {
  return typeof value === "number" ? String(value) : `a value of type ${typeof value}`;
}
