import { powerOfTwoScale } from "./scale";

/** Values as mean + scale × residual, in units where squares neither overflow nor vanish. */
export interface Centred {
  readonly mean: number;
  readonly scale: number;
  readonly residuals: Float64Array;
  /** True when all values are the same number. */
  readonly constant: boolean;
}

/**
 * Mean and residuals. The first value is taken off before summing: equal values give residuals of exactly zero,
 * and a large common part (1e15 + small) doesn't swallow the rest.
 */
export function centred(values: readonly number[]): Centred {
  const scale = powerOfTwoScale(values);
  const first = (values[0] as number) / scale;
  const residuals = Float64Array.from(values).map((value) => value / scale - first);
  const constant = residuals.every((residual) => residual === 0);
  let shift = 0;
  for (const residual of residuals) shift += residual;
  shift /= residuals.length;
  let correction = 0;
  for (let i = 0; i < residuals.length; i++) {
    const residual = (residuals[i] as number) - shift;
    residuals[i] = residual;
    correction += residual;
  }
  correction /= residuals.length; // what rounding left of the sum of residuals, which is zero by definition
  for (let i = 0; i < residuals.length; i++) residuals[i] = (residuals[i] as number) - correction;
  return { mean: (first + shift + correction) * scale, scale, residuals, constant };
}

/** Sum of squares. */
export function sumOfSquares(values: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += (values[i] as number) * (values[i] as number);
  return sum;
}
