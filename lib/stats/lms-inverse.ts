import { flatPower, type LmsRow, lmsAt } from "./growth/lms-row";
import type { Note } from "./notes";
import { requireFinite } from "./require";

/**
 * The measurement that lies at a z score of a growth table: M (1 + L S z)^(1/L), M exp(S z) when L is 0.
 * Cole TJ, Green PJ. Stat Med 1992;11:1305-1319.
 * @param at the place in the table; null answers outside it, and where no measurement has this z
 * @throws RangeError when the table is not in order; TypeError when z isn't finite
 * @example lmsInverse({ z: -2, at: 10, table: [{ at: 10, L: 1, M: 138.2, S: 0.045 }] }).value?.toFixed(3) // => "125.762"
 */
export function lmsInverse({ z, at, table }: { z: number; at: number; table: readonly LmsRow[] }) {
  requireFinite("lmsInverse", "z", [z]);
  const row = lmsAt("lmsInverse", table, at);
  const method = "LMS measurement at a z score, linear between rows";
  const base = row === null ? 0 : 1 + row.L * row.S * z;
  if (row === null || base <= 0) {
    const notes: readonly Note[] = [
      { code: "not-estimable", because: row ? "no measurement has this z score" : "outside the growth table" },
    ];
    return { value: null, method, notes } as const;
  }
  const value = Math.abs(row.L) < flatPower ? row.M * Math.exp(row.S * z) : row.M * Math.exp(Math.log1p(row.L * row.S * z) / row.L);
  return { value, method, notes: [] as readonly Note[] } as const;
}
