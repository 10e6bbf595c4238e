import { hypergeometric } from "./distributions";
import type { Note } from "./notes";
import type { TestResult } from "./record";
import { requireConfidence } from "./require";
import { readTable, type Table } from "./tables/check-table";
import { exactP } from "./tables/exact-p";
import { conditionalOdds, logOddsWhere } from "./tables/odds-ratio";

/** Tables whose probabilities differ by no more than this share are equally likely. */
const nearlyEqual = 1 + 1e-7;

export interface FisherExact extends TestResult {
  readonly p: number;
  /** P of a first cell as small, as large; for 2 × 2 only. */
  readonly pLess: number | null;
  readonly pGreater: number | null;
  /** Conditional maximum-likelihood odds ratio (not ad/bc) and its exact interval; null for larger tables and where infinite. */
  readonly estimate: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
}

/**
 * Fisher's exact test of a cross-table. Two-sided p is the sum over all tables no more likely than the one seen, margins given.
 * For 2 × 2 also the one-sided p values and the conditional odds ratio with its exact interval; an infinite limit is null, with a note.
 * Fisher RA. J R Stat Soc 1935;98:39-82; Freeman GH, Halton JH. Biometrika 1951;38:141-149.
 * @param table rows of counts
 * @throws RangeError when the table is smaller than 2 × 2, holds anything but whole counts, has an empty row or column, or too many tables are possible
 * @example fisherExact({ table: [[3, 1], [1, 3]] }).p.toFixed(4) // => "0.4857"
 */
export function fisherExact({ table, confidence = 0.95 }: { table: readonly (readonly number[])[]; confidence?: number }): FisherExact {
  requireConfidence("fisherExact", confidence);
  const read = readTable("fisherExact", table);
  const twoByTwo = read.rowTotals.length === 2 && read.columnTotals.length === 2;
  const answer = twoByTwo ? ofFour(read, confidence) : ofMany(read);
  return {
    statistic: null,
    df: null,
    n: read.n,
    patients: null,
    method: "Fisher’s exact test",
    convention: "two-sided by likelihood",
    ...answer,
  };
}

function ofMany(table: Table) {
  return { p: exactP(table), pLess: null, pGreater: null, estimate: null, lower: null, upper: null, notes: [] };
}

function ofFour({ counts, rowTotals, columnTotals }: Table, confidence: number) {
  const x = counts[0]?.[0] as number;
  const { least, probabilities } = hypergeometric(rowTotals[0] as number, rowTotals[1] as number, columnTotals[0] as number);
  const own = probabilities[x - least] as number;
  const sumOf = (keep: (p: number, i: number) => boolean) => {
    const kept = probabilities.filter(keep).sort(); // small ones first, so that none is lost
    return Math.min(
      1,
      kept.reduce((sum, p) => sum + p, 0),
    );
  };
  return {
    p: sumOf((p) => p <= own * nearlyEqual),
    pLess: sumOf((_, i) => i <= x - least),
    pGreater: sumOf((_, i) => i >= x - least),
    ...oddsRatio(probabilities, least, x, confidence),
  };
}

function oddsRatio(probabilities: Float64Array, least: number, x: number, confidence: number) {
  const tail = (1 - confidence) / 2;
  const { mean, atLeast, atMost, smallest, largest } = conditionalOdds(probabilities, least, x);
  const estimate = smallest ? 0 : largest ? null : Math.exp(logOddsWhere(mean, x));
  const lower = smallest ? 0 : Math.exp(logOddsWhere(atLeast, tail));
  const upper = largest ? null : Math.exp(logOddsWhere((logOdds) => -atMost(logOdds), -tail));
  const notes: Note[] = largest ? [{ code: "not-estimable", because: "a cell is zero, so the odds ratio has no upper end" }] : [];
  // Margins that allow one table only say nothing about the odds ratio.
  if (smallest && largest) return { estimate: null, lower: null, upper: null, notes };
  return { estimate, lower, upper, notes };
}
