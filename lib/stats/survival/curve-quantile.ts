/** Distance from the level within which a curve counts as exactly at it. */
const atLevel = 1.5e-8; // square root of the machine's precision, as in R's survfit

/**
 * Time by which a falling curve has come down to `level`: the first time at or below it. Where it is flat at exactly the level,
 * the middle of the flat stretch, or its start when the curve never falls further (the rule of R's `print.survfit`).
 * Null when not reached.
 * @example timeAtLevel([3, 5, 8], [0.5, 0.25, 0], 0.5) // => 4
 */
export function timeAtLevel(time: ArrayLike<number>, share: ArrayLike<number | null>, level: number): number | null {
  for (let step = 0; step < time.length; step++) {
    const reached = share[step] ?? Infinity; // a limit that isn't known has not come down
    if (reached >= level + atLevel) continue;
    const start = time[step] as number;
    if (Math.abs(reached - level) >= atLevel) return start;
    const end = firstBelow(time, share, step, reached);
    return end === null ? start : start + (end - start) / 2;
  }
  return null;
}

function firstBelow(time: ArrayLike<number>, share: ArrayLike<number | null>, from: number, reached: number): number | null {
  for (let step = from + 1; step < time.length; step++) {
    if ((share[step] ?? Infinity) < reached) return time[step] as number;
  }
  return null;
}
