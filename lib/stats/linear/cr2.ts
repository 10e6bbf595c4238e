import { wholeDf } from "../summary/whole-df";
import type { ClusteredFit } from "./clustered-fit";
import { dot, dotAt } from "./small";

/** A contrast a in the coordinates of Q, and of each patient, p a patient: square · a and cross · a (see Parts). */
export interface Direction {
  readonly a: Float64Array;
  readonly patients: number;
  readonly squares: Float64Array;
  readonly crosses: Float64Array;
}

export function directionOf({ p, patients, squares, crosses }: ClusteredFit, a: Float64Array): Direction {
  const times = (matrices: Float64Array) => {
    const vectors = new Float64Array(patients * p);
    for (let i = 0; i < vectors.length; i++) vectors[i] = dotAt(matrices, i * p, a, 0, p);
    return vectors;
  };
  return { a, patients, squares: times(squares), crosses: times(crosses) };
}

/** CR2 covariance of two contrasts: Σ over patients of (a · score)(a′ · score). */
export function cr2Covariance({ p, patients, scores }: ClusteredFit, one: Direction, other: Direction): number {
  let sum = 0;
  for (let c = 0; c < patients; c++) sum += dotAt(one.a, 0, scores, c * p, p) * dotAt(other.a, 0, scores, c * p, p);
  return sum;
}

/** |g|² of a patient for two contrasts. */
export function ownPart(one: Direction, other: Direction, patient: number): number {
  const p = other.a.length;
  return dotAt(one.squares, patient * p, other.a, 0, p);
}

/** Qᵀg · Qᵀg of a patient for two contrasts. */
export function crossPart(one: Direction, other: Direction, patient: number): number {
  const p = other.a.length;
  return dotAt(one.crosses, patient * p, other.crosses, patient * p, p);
}

/**
 * What the estimator of the covariance of two contrasts is on average under the working model: Σ over patients of (g · g′ − Qᵀg · Qᵀg′).
 * For one contrast it equals a · a (CR2 has no bias there), unless a patient alone determines a part of it.
 */
export function meanUnderModel(one: Direction, other: Direction): number {
  let sum = 0;
  for (let c = 0; c < one.patients; c++) sum += ownPart(one, other, c) - crossPart(one, other, c);
  return sum;
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
  const outer = outerSum(direction, direction);
  let sum = dot(outer, outer);
  for (let c = 0; c < direction.patients; c++) {
    const own = ownPart(direction, direction, c);
    sum += own * (own - 2 * crossPart(direction, direction, c));
  }
  return wholeDf(meanUnderModel(direction, direction) ** 2 / sum);
}

/** Σ over patients of v wᵀ, v and w the crosses of two contrasts, p × p by rows. */
export function outerSum(one: Direction, other: Direction): Float64Array {
  const p = one.a.length;
  const sum = new Float64Array(p * p);
  for (let at = 0; at < one.crosses.length; at += p)
    for (let j = 0; j < p; j++)
      for (let k = 0; k < p; k++)
        sum[j * p + k] = (sum[j * p + k] as number) + (one.crosses[at + j] as number) * (other.crosses[at + k] as number);
  return sum;
}
