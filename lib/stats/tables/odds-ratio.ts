/**
 * The conditional (non-central hypergeometric) distribution of the first cell of a 2 × 2 table, as logarithms so that any odds ratio can be tried.
 * @param central probabilities at odds ratio 1, from the smallest possible count up
 */
export function conditionalOdds(central: Float64Array, least: number, x: number) {
  const logs = central.map(Math.log);
  const at = (logOdds: number) => {
    const weights = logs.map((log, i) => log + i * logOdds);
    const top = weights.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
    const raised = weights.map((weight) => Math.exp(weight - top));
    const total = raised.reduce((a, b) => a + b, 0);
    return raised.map((weight) => weight / total);
  };
  const mean = (logOdds: number) => at(logOdds).reduce((sum, p, i) => sum + p * (least + i), 0);
  const atLeast = (logOdds: number) =>
    at(logOdds)
      .subarray(x - least)
      .reduce((a, b) => a + b, 0);
  const atMost = (logOdds: number) =>
    at(logOdds)
      .subarray(0, x - least + 1)
      .reduce((a, b) => a + b, 0);
  return { mean, atLeast, atMost, smallest: x === least, largest: x === least + central.length - 1 };
}

/** Where a rising function of the log odds ratio meets a target, by halving; exact to the last digits. */
export function logOddsWhere(rising: (logOdds: number) => number, target: number): number {
  let [low, high] = [-1, 1];
  while (rising(low) > target) low *= 2;
  while (rising(high) < target) high *= 2;
  for (let i = 0; i < 200; i++) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) break;
    if (rising(middle) < target) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
