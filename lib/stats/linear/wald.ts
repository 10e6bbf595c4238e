import { CholeskyDecomposition, Matrix } from "ml-matrix";
import type { ClusteredFit } from "./clustered-fit";
import { cr2Covariance, crossPart, type Direction, directionOf, isSeen, meanUnderModel, outerSum, ownPart } from "./cr2";
import { symmetricPower } from "./symmetric-power";

/** Q = d′V⁻¹d of q contrasts, and η, the df of V as a whole; null when V is singular or a patient alone determines a contrast. */
export interface WaldParts {
  readonly q: number;
  readonly quadratic: number | null;
  readonly eta: number | null;
}

/** @param contrasts each in the coordinates of Q, with its estimate on the scale of the fit's residuals */
export function waldParts(fit: ClusteredFit, contrasts: readonly { a: Float64Array; estimate: number }[]): WaldParts {
  const q = contrasts.length;
  const directions = contrasts.map(({ a }) => directionOf(fit, a));
  const covariance = new Matrix(directions.map((one) => directions.map((other) => cr2Covariance(fit, one, other))));
  const cholesky = new CholeskyDecomposition(covariance);
  if (!directions.every(isSeen) || !cholesky.isPositiveDefinite()) return { q, quadratic: null, eta: null };
  const estimates = Matrix.columnVector(contrasts.map(({ estimate }) => estimate));
  const quadratic = estimates.transpose().mmul(cholesky.solve(estimates)).get(0, 0);
  return { q, quadratic, eta: (q * (q + 1)) / totalVariance(standardised(fit, directions)) };
}

/** The contrasts turned so that, under the working model, their estimated covariance is the identity on average. */
function standardised(fit: ClusteredFit, directions: readonly Direction[]): Direction[] {
  const q = directions.length;
  const omega = Float64Array.from(directions.flatMap((one) => directions.map((other) => meanUnderModel(one, other))));
  const root = symmetricPower(omega, q, -0.5, Math.max(...omega.map(Math.abs)));
  return directions.map((_, s) => {
    const turned = new Float64Array(fit.p);
    directions.forEach(({ a }, t) => {
      for (let j = 0; j < turned.length; j++) turned[j] = (turned[j] as number) + (root[s * q + t] as number) * (a[j] as number);
    });
    return directionOf(fit, turned);
  });
}

/** Sum over s, t of the variances of the estimated covariances: ΣΣ (Pˢˢ · Pᵗᵗ + Pˢᵗ · (Pˢᵗ)ᵀ) over pairs of patients. */
function totalVariance(directions: readonly Direction[]): number {
  let total = 0;
  for (const one of directions) for (const other of directions) total += varianceOfCovariance(one, other);
  return total;
}

/** With P_ij = δ |g|² − vᵢ · v′ⱼ both sums over pairs of patients come down to K = Σ v v′ᵀ, p × p. */
function varianceOfCovariance(one: Direction, other: Direction): number {
  const p = one.a.length;
  const cross = outerSum(one, other);
  let sum = 0;
  for (let c = 0; c < one.patients; c++) {
    const [first, second, both] = [ownPart(one, one, c), ownPart(other, other, c), ownPart(one, other, c)];
    sum += first * second - first * crossPart(other, other, c) - second * crossPart(one, one, c);
    sum += both * (both - 2 * crossPart(one, other, c));
  }
  for (let j = 0; j < p; j++) {
    for (let k = 0; k < p; k++) sum += (cross[j * p + k] as number) * ((cross[j * p + k] as number) + (cross[k * p + j] as number));
  }
  return sum;
}
