import { thresholds } from "@/lib/stats";
import type { FigureSource } from "../figure/source";

/** How unlike two groups were to begin with, field by field. */
export type BalanceRecord = FigureSource & {
  readonly groups: readonly [first: BalanceGroup, second: BalanceGroup];
  readonly rows: readonly BalanceRow[];
};

export type BalanceGroup = { readonly label: string; readonly segments: number; readonly patients: number };

export type BalanceRow = {
  /** The field in words. */
  readonly label: string;
  /** Standardised difference; its size is drawn. `null`: nothing varies, or nothing is recorded. */
  readonly smd: number | null;
  /** Values held in each group. */
  readonly recorded: readonly [first: number, second: number];
  /** What each group is like, in words: `34 years (SD 12)`, `62 % femur`. */
  readonly values?: readonly [first: string, second: string];
};

/** Above this size groups are called unlike; as for gains, a judgement. */
export const unlikeFrom = thresholds.gainsApart;

export function isUnlike({ smd }: BalanceRow): boolean {
  return smd !== null && Math.abs(smd) > unlikeFrom;
}

/** Largest difference first; those without one last. */
export function sorted(rows: readonly BalanceRow[]): readonly BalanceRow[] {
  const size = ({ smd }: BalanceRow) => (smd === null ? -1 : Math.abs(smd));
  return [...rows].sort((a, b) => size(b) - size(a));
}
