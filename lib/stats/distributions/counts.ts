import { requireCount, requireProbability } from "../require";
import { betaCdf, betaUpper } from "./beta";
import { gammaCdf, gammaUpper } from "./gamma";

/** P(X ≤ k) of the binomial, as the upper tail of a beta. */
export function binomialCdf(k: number, n: number, p: number): number {
  requireBinomial("binomialCdf", k, n, p);
  return k === n ? 1 : betaUpper(p, k + 1, n - k);
}

/** P(X ≥ k) of the binomial. */
export function binomialAtLeast(k: number, n: number, p: number): number {
  requireBinomial("binomialAtLeast", k, n, p);
  return k === 0 ? 1 : betaCdf(p, k, n - k + 1);
}

/** P(X ≤ k) of the Poisson distribution. */
export function poissonCdf(k: number, mean: number): number {
  requirePoisson("poissonCdf", k, mean);
  return gammaUpper(mean, k + 1);
}

/** P(X ≥ k) of the Poisson distribution. */
export function poissonAtLeast(k: number, mean: number): number {
  requirePoisson("poissonAtLeast", k, mean);
  return k === 0 ? 1 : gammaCdf(mean, k);
}

function requireBinomial(caller: string, k: number, n: number, p: number): void {
  requireCount(caller, "n", n);
  requireCount(caller, "k", k);
  if (k > n) throw new RangeError(`${caller} requires k of at most n (${n}), received ${k}`);
  requireProbability(caller, "p", p);
}

function requirePoisson(caller: string, k: number, mean: number): void {
  requireCount(caller, "k", k);
  if (!(mean >= 0 && Number.isFinite(mean))) throw new RangeError(`${caller} requires a mean of at least zero, received ${mean}`);
}
