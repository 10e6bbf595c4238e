import { requireProbability, requireSome } from "./require";

/**
 * p values adjusted for looking several times, by Holm's step-down rule; in the order given.
 * Holm S. Scand J Stat 1979;6:65-70.
 * @throws RangeError without p values or when one lies outside 0 to 1
 * @example holm({ p: [0.04, 0.01] }).adjusted // => [0.04, 0.02]
 */
export function holm({ p }: { p: readonly number[] }) {
  requireSome("holm", "p value", p.length);
  for (const value of p) requireProbability("holm", "p", value);
  const order = p.map((_, i) => i).sort((i, j) => (p[i] as number) - (p[j] as number));
  const adjusted = new Array<number>(p.length);
  let soFar = 0;
  order.forEach((at, rank) => {
    soFar = Math.max(soFar, Math.min(1, (p.length - rank) * (p[at] as number)));
    adjusted[at] = soFar;
  });
  return { adjusted: adjusted as readonly number[], n: p.length, method: "Holm’s step-down adjustment", notes: [] } as const;
}
