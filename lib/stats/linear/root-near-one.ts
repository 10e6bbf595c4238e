/** (1 − x)^(−1/2) = 1 + x/2 + 3x²/8 + 5x³/16 + 35x⁴/128 + …: the binomial series. */
const series = [1, 1 / 2, 3 / 8, 5 / 16, 35 / 128] as const;
/** Below this trace what the series leaves out, at most 63/256 of its fifth power, is lost in rounding. */
const smallTrace = 2 ** -11;
const mostColumns = 8;
/** Written over from one matrix to the next, since there are a hundred thousand. */
let [root, next] = [new Float64Array(mostColumns ** 2), new Float64Array(mostColumns ** 2)];

/**
 * (I − G)^(−1/2) of a G near zero, such as that of one patient among thousands, by its series: many times shorter than by eigenvalues.
 * @param grams positive semidefinite matrices, p × p by rows, of which the one from place `at` on is taken
 * @returns a matrix that stands until the next call; `null` for a G too large, or of more than eight columns
 */
export function rootNearOne(grams: ArrayLike<number>, at: number, p: number): Float64Array | null {
  if (p > mostColumns || !(traceOf(grams, at, p) < smallTrace)) return null;
  root.fill(0, 0, p * p);
  for (let i = 0; i < p; i++) root[i * (p + 1)] = series[4];
  for (let term = 3; term >= 0; term--) {
    timesRoot(grams, at, p);
    for (let i = 0; i < p; i++) next[i * (p + 1)] = (next[i * (p + 1)] as number) + (series[term] as number);
    [root, next] = [next, root];
  }
  return root;
}

function traceOf(grams: ArrayLike<number>, at: number, p: number): number {
  let trace = 0;
  for (let i = 0; i < p; i++) trace += grams[at + i * (p + 1)] as number;
  return trace;
}

/** Into `next` the product of G and what the root is so far. */
function timesRoot(grams: ArrayLike<number>, at: number, p: number): void {
  for (let i = 0; i < p; i++) {
    for (let j = 0; j < p; j++) {
      let sum = 0;
      for (let k = 0; k < p; k++) sum += (grams[at + i * p + k] as number) * (root[k * p + j] as number);
      next[i * p + j] = sum;
    }
  }
}
