import { requireCount } from "../require";

/** Counts of the first kind among `draws` from `first` + `second`: the smallest possible one and the probability of it and each after. */
export interface Hypergeometric {
  readonly least: number;
  readonly probabilities: Float64Array;
}

/**
 * All probabilities of the hypergeometric distribution, by the ratio of neighbours outwards from the mode, then scaled to sum to one:
 * no factorial or log-gamma is formed, so the digits last for large tables too.
 * @throws RangeError when a count is negative or more is drawn than there is
 * @example Array.from(hypergeometric(1, 1, 1).probabilities) // => [0.5, 0.5]
 */
export function hypergeometric(first: number, second: number, draws: number): Hypergeometric {
  requireCount("hypergeometric", "first", first);
  requireCount("hypergeometric", "second", second);
  requireCount("hypergeometric", "draws", draws);
  if (draws > first + second) throw new RangeError(`hypergeometric requires at most ${first + second} draws, received ${draws}`);
  const least = Math.max(0, draws - second);
  const most = Math.min(first, draws);
  const mode = Math.min(most, Math.max(least, Math.floor(((draws + 1) * (first + 1)) / (first + second + 2))));
  const probabilities = new Float64Array(most - least + 1);
  probabilities[mode - least] = 1;
  const ratio = (k: number) => ((first - k) * (draws - k)) / ((k + 1) * (second - draws + k + 1)); // P(k + 1) / P(k)
  for (let k = mode; k < most; k++) probabilities[k + 1 - least] = (probabilities[k - least] as number) * ratio(k);
  for (let k = mode; k > least; k--) probabilities[k - 1 - least] = (probabilities[k - least] as number) / ratio(k - 1);
  const total = probabilities.reduce((sum, p) => sum + p, 0);
  return { least, probabilities: probabilities.map((p) => p / total) };
}

/** P(X ≤ k). */
export function hypergeometricCdf(k: number, first: number, second: number, draws: number): number {
  const { least, probabilities } = hypergeometric(first, second, draws);
  return sumOf(probabilities.subarray(0, Math.max(0, k - least + 1)));
}

/** P(X ≥ k). */
export function hypergeometricAtLeast(k: number, first: number, second: number, draws: number): number {
  const { least, probabilities } = hypergeometric(first, second, draws);
  return sumOf(
    probabilities
      .subarray(Math.max(0, k - least))
      .slice()
      .reverse(),
  );
}

function sumOf(parts: Float64Array): number {
  return Math.min(
    1,
    parts.reduce((sum, p) => sum + p, 0),
  );
}
