import { normalCdf } from "./distributions";
import { flatPower, type LmsRow, lmsAt } from "./growth/lms-row";
import type { Note } from "./notes";
import { requirePositive } from "./require";

/**
 * z score and centile of a measurement against a growth table, by Cole's LMS method: z = ((value/M)ᴸ − 1)/(L S), log(value/M)/S when L is 0.
 * The plain form, as for height; the restricted form that some tables use for weight beyond ±3 is not this one.
 * Cole TJ, Green PJ. Stat Med 1992;11:1305-1319.
 * @param value in the unit of M, above zero
 * @param at the place in the table, such as the age, in the table's own unit; null answers outside it
 * @param table rows in rising order of `at`, of one sex
 * @throws RangeError when the value isn't above zero or the table is not in order
 * @example lms({ value: 8.2, at: 9.5, table: [{ at: 9.5, L: -0.1600954, M: 9.476500305, S: 0.11218624 }] }).z?.toFixed(4) // => "-1.3047"
 */
export function lms({ value, at, table }: { value: number; at: number; table: readonly LmsRow[] }) {
  requirePositive("lms", "value", value);
  const row = lmsAt("lms", table, at);
  const method = "LMS z score, linear between rows";
  if (row === null) {
    const notes: readonly Note[] = [{ code: "not-estimable", because: "outside the growth table" }];
    return { z: null, centile: null, method, notes } as const;
  }
  const logRatio = Math.log(value / row.M);
  // expm1 keeps the digits that (value/M)ᴸ − 1 loses for a small L.
  const z = Math.abs(row.L) < flatPower ? logRatio / row.S : Math.expm1(row.L * logRatio) / (row.L * row.S);
  return { z, centile: 100 * normalCdf(z), method, notes: [] as readonly Note[] } as const;
}
