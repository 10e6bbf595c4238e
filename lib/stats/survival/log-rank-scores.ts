import type { TimeRows } from "./require-rows";
import { riskSteps } from "./risk-steps";

/**
 * Event less the hazard that a row lived through (its martingale residual by Nelson and Aalen): the scores of the log-rank test, which a
 * permutation exchanges between groups.
 */
export function logRankScores(rows: TimeRows): number[] {
  const steps = riskSteps(rows);
  let sum = 0;
  const hazard = steps.atRisk.map((n, step) => {
    sum += (steps.events[step] as number) / n;
    return sum;
  });
  return Array.from(steps.exit, (exit, row) => {
    const start = steps.start[row] as number;
    return (rows.event[row] as number) - ((hazard[exit] as number) - (start === 0 ? 0 : (hazard[start - 1] as number)));
  });
}
