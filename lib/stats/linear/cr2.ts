import { wholeDf } from "../summary/whole-df";
import type { Adjusted } from "./adjusted";
import type { ClusteredFit } from "./clustered-fit";
import { dot, times } from "./small";

/** A contrast a in the coordinates of Q, and of each patient: square · a and cross · a (see Adjusted). */
export interface Direction {
  readonly a: Float64Array;
  readonly squares: readonly Float64Array[];
  readonly crosses: readonly Float64Array[];
}

export function directionOf({ parts }: ClusteredFit, a: Float64Array): Direction {
  return { a, squares: parts.map(({ square }) => times(square, a)), crosses: parts.map(({ cross }) => times(cross, a)) };
}

/** CR2 covariance of two contrasts: Σ over patients of (a · score)(a′ · score). */
export function cr2Covariance({ parts }: ClusteredFit, one: Direction, other: Direction): number {
  return parts.reduce((sum, { score }: Adjusted) => sum + dot(one.a, score) * dot(other.a, score), 0);
}

/** |g|² of a patient for two contrasts. */
export function ownPart(one: Direction, other: Direction, patient: number): number {
  return dot(one.squares[patient] as Float64Array, other.a);
}

/**
 * What the estimator of the covariance of two contrasts is on average under the working model: Σ over patients of (g · g′ − Qᵀg · Qᵀg′).
 * For one contrast it equals a · a (CR2 has no bias there), unless a patient alone determines a part of it.
 */
export function meanUnderModel(one: Direction, other: Direction): number {
  return one.crosses.reduce((sum, cross, c) => sum + ownPart(one, other, c) - dot(cross, other.crosses[c] as Float64Array), 0);
}

/** True when no patient alone determines a part of the contrast, so that its variance can be seen in the data at all. */
export function isSeen(direction: Direction): boolean {
  return meanUnderModel(direction, direction) > dot(direction.a, direction.a) * (1 - 1e-8);
}

/**
 * Satterthwaite's df of the variance of one contrast, (tr P)² / ‖P‖² with P = δ |g|² − Qᵀg · Qᵀg over pairs of patients.
 * ‖P‖² is summed by p × p products, not over the pairs. Pustejovsky JE, Tipton E. J Bus Econ Stat 2018;36:672-683, section 3.
 */
export function satterthwaite(direction: Direction): number {
  const { crosses } = direction;
  const outer = outerSum(crosses, crosses);
  let sum = dot(outer, outer);
  crosses.forEach((cross, c) => {
    const own = ownPart(direction, direction, c);
    sum += own * (own - 2 * dot(cross, cross));
  });
  return wholeDf(meanUnderModel(direction, direction) ** 2 / sum);
}

/** Σ over patients of v wᵀ, p × p by rows. */
export function outerSum(vs: readonly Float64Array[], ws: readonly Float64Array[]): Float64Array {
  const p = vs[0]?.length ?? 0;
  const sum = new Float64Array(p * p);
  vs.forEach((v, c) => {
    const w = ws[c] as Float64Array;
    for (let j = 0; j < p; j++)
      for (let k = 0; k < p; k++) sum[j * p + k] = (sum[j * p + k] as number) + (v[j] as number) * (w[k] as number);
  });
  return sum;
}
