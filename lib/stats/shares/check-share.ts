import { requireConfidence, requireCount, requireSome } from "../require";

/** x of n: whole numbers, at least one case, x within n. */
export function requireShare(caller: string, x: number, n: number, confidence: number): void {
  requireCount(caller, "n", n);
  requireSome(caller, "case", n);
  requireCount(caller, "x", x);
  if (x > n) throw new RangeError(`${caller} requires x of at most n (${n}), received ${x}`);
  requireConfidence(caller, confidence);
}
