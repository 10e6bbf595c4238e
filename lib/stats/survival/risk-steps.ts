import { addAt } from "./add-at";
import { type TimeRows, tieTolerance } from "./require-rows";
import { rowsInOrder } from "./sort-rows";

/**
 * The distinct times of a data set in rising order, with who is under observation at each.
 * A row counts as at risk at step s when `start[row] ≤ s ≤ exit[row]`, so events come before the censorings of the same time,
 * and a row that enters at a time is at risk only after it.
 */
export interface RiskSteps {
  readonly time: Float64Array;
  readonly atRisk: Float64Array;
  /** Rows with any event at the step. */
  readonly events: Float64Array;
  readonly censored: Float64Array;
  /** Row → step of its time. */
  readonly exit: Uint32Array;
  /** Row → first step at which it is at risk. */
  readonly start: Uint32Array;
}

export function riskSteps({ times, event, entry }: TimeRows): RiskSteps {
  const { time, exit } = distinctTimes(times);
  const start = new Uint32Array(times.length);
  if (entry) for (let row = 0; row < start.length; row++) start[row] = firstStepAfter(time, entry[row] as number);
  const events = new Float64Array(time.length);
  const censored = new Float64Array(time.length);
  for (let row = 0; row < exit.length; row++) addAt(event[row] ? events : censored, exit[row] as number, 1);
  return { time, atRisk: countAtRisk(start, exit, time.length), events, censored, exit, start };
}

/** Times within the tie tolerance of the first of their group are one step, which bears the first one's time. */
function distinctTimes(times: ArrayLike<number>): { time: Float64Array; exit: Uint32Array } {
  const order = rowsInOrder(times);
  const time = new Float64Array(times.length);
  const exit = new Uint32Array(times.length);
  let steps = 0;
  for (let i = 0; i < order.length; i++) {
    const row = order[i] as number;
    const value = times[row] as number;
    const tied = steps > 0 && value * (1 - tieTolerance) <= (time[steps - 1] as number);
    if (!tied) time[steps++] = value;
    exit[row] = steps - 1;
  }
  return { time: time.slice(0, steps), exit };
}

function firstStepAfter(time: Float64Array, entry: number): number {
  let [low, high] = [0, time.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (entry < (time[middle] as number) * (1 - tieTolerance)) high = middle;
    else low = middle + 1;
  }
  return low;
}

function countAtRisk(start: Uint32Array, exit: Uint32Array, steps: number): Float64Array {
  const change = new Float64Array(steps + 1);
  for (let row = 0; row < start.length; row++) {
    addAt(change, start[row] as number, 1);
    addAt(change, (exit[row] as number) + 1, -1);
  }
  for (let step = 1; step < steps; step++) addAt(change, step, change[step - 1] as number);
  return change.slice(0, steps);
}
