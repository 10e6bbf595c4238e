/** Scale on which the limits of a curve are symmetric. */
export type LimitScale = "log-log" | "log" | "plain";

export const limitScales: readonly LimitScale[] = ["log-log", "log", "plain"];

/**
 * Pointwise limits of a share between 0 and 1 with standard error `se`, `z` standard errors wide.
 * A share of exactly 1 before any event keeps the limits 1; at exactly 0 the standard error carries nothing, and the limits are null.
 * Log-log: exp(−exp(log(−log p) ∓ z·se/(p·log p))); log: p·exp(∓z·se/p), cut at 1; plain: p ∓ z·se, cut at 0 and 1.
 */
export function limitsOfShare(share: number, se: number, z: number, scale: LimitScale): readonly [number, number] | readonly [null, null] {
  if (share === 0) return [null, null];
  if (share === 1) return [1, 1];
  if (scale === "plain") return [Math.max(0, share - z * se), Math.min(1, share + z * se)];
  if (scale === "log") return [share * Math.exp((-z * se) / share), Math.min(1, share * Math.exp((z * se) / share))];
  const width = (z * se) / (share * -Math.log(share));
  return [share ** Math.exp(width), share ** Math.exp(-width)];
}
