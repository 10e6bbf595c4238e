import { betaQuantile, betaUpperQuantile } from "./distributions/beta";
import { binomialAtLeast, binomialCdf } from "./distributions/counts";
import { requireConfidence, requireCount, requirePositive } from "./require";

/**
 * Ratio of two Poisson rates with the exact interval that holds the sum of events fixed (a binomial then).
 * Every event is counted as independent. Przyborowski J, Wilenski H. Biometrika 1940;31:313-323.
 * @throws RangeError when a count isn't a whole number of at least zero or an exposure isn't above zero
 * @example exactRateRatio({ events1: 11, exposure1: 800, events2: 5, exposure2: 900 }).estimate.toFixed(3) // => "2.475"
 */
export function exactRateRatio({
  events1,
  exposure1,
  events2,
  exposure2,
  confidence = 0.95,
}: {
  events1: number;
  exposure1: number;
  events2: number;
  exposure2: number;
  confidence?: number;
}) {
  for (const [name, value] of Object.entries({ events1, events2 })) requireCount("exactRateRatio", name, value);
  for (const [name, value] of Object.entries({ exposure1, exposure2 })) requirePositive("exactRateRatio", name, value);
  requireConfidence("exactRateRatio", confidence);
  const total = events1 + events2;
  const unit = exposure2 / exposure1;
  const tail = (1 - confidence) / 2;
  const ratioOf = (share: number) => (share === 1 ? null : (share / (1 - share)) * unit);
  const lower = events1 === 0 ? 0 : ratioOf(betaQuantile(tail, events1, events2 + 1));
  const upper = events2 === 0 ? null : ratioOf(betaUpperQuantile(tail, events1 + 1, events2));
  return {
    estimate: events2 === 0 ? null : (events1 / events2) * unit,
    se: null,
    df: null,
    lower: total === 0 ? null : lower,
    upper,
    p: total === 0 ? null : twoSidedP(events1, total, exposure1 / (exposure1 + exposure2)),
    n: total,
    patients: null,
    method: "ratio of Poisson rates, exact conditional interval",
    convention: "two-sided p sums the outcomes no likelier than the one seen",
    notes: [],
  } as const;
}

/** P of the outcomes no likelier than x under the binomial with share p, as R's binom.test (with its tolerance of 1e-7 for ties). */
function twoSidedP(x: number, n: number, p: number): number {
  const density = (k: number) => binomialCdf(k, n, p) - (k === 0 ? 0 : binomialCdf(k - 1, n, p));
  const limit = density(x) * (1 + 1e-7);
  const middle = n * p;
  if (x === middle) return 1;
  const below = x < middle;
  let far = 0;
  for (let k = below ? Math.ceil(middle) : 0; k <= (below ? n : Math.floor(middle)); k++) if (density(k) <= limit) far += 1;
  if (below) return Math.min(1, binomialCdf(x, n, p) + (far === 0 ? 0 : binomialAtLeast(n - far + 1, n, p)));
  return Math.min(1, binomialAtLeast(x, n, p) + (far === 0 ? 0 : binomialCdf(far - 1, n, p)));
}
