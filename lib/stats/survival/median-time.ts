import type { LogNormalEstimates } from "./log-normal-variance";

/** A median on the scale of time, its limits symmetric on the log scale. */
export interface MedianTime {
  readonly estimate: number;
  /** On the scale of time, by the delta method. */
  readonly se: number | null;
  readonly logSe: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
}

/** exp(β₀ + Σ βⱼ·covariate), the median of a log-normal time, `z` standard errors wide; without limits when z is null. */
export function medianTimeAt(
  { parameters, robust }: Pick<LogNormalEstimates, "parameters" | "robust">,
  at: readonly number[],
  z: number | null,
): MedianTime {
  const size = parameters.length;
  const x = [1, ...at];
  const log = x.reduce((sum, value, j) => sum + value * (parameters[j] as number), 0);
  const estimate = Math.exp(log);
  if (z === null) return { estimate, se: null, logSe: null, lower: null, upper: null };
  const variance = x.reduce((sum, a, i) => x.reduce((inner, b, j) => inner + a * b * (robust[i * size + j] as number), sum), 0);
  const logSe = Math.sqrt(Math.max(variance, 0));
  return { estimate, se: estimate * logSe, logSe, lower: Math.exp(log - z * logSe), upper: Math.exp(log + z * logSe) };
}
