import { requireFinite, requireSome } from "../require";

/** One row of a growth table: the place (age, in the table's own unit) and the three numbers of the distribution there. */
export interface LmsRow {
  readonly at: number;
  readonly L: number;
  readonly M: number;
  readonly S: number;
}

/**
 * L, M and S at a place, linear between the rows on either side; null outside the table.
 * @throws RangeError without rows, with places that don't rise, or with M or S not above zero
 */
export function lmsAt(caller: string, table: readonly LmsRow[], at: number): LmsRow | null {
  requireSome(caller, "row of the table", table.length);
  requireFinite(caller, "at", [at]);
  table.forEach((row, i) => {
    requireFinite(caller, `row ${i} of the table`, [row.at, row.L, row.M, row.S]);
    if (!(row.M > 0 && row.S > 0))
      throw new RangeError(`${caller} requires M and S above zero, received ${row.M} and ${row.S} in row ${i}`);
    const before = table[i - 1];
    if (before && !(row.at > before.at))
      throw new RangeError(`${caller} requires rows in rising order, received ${row.at} after ${before.at}`);
  });
  const above = table.findIndex((row) => row.at >= at);
  const [right, left] = [table[above], table[Math.max(0, above - 1)]];
  if (!right || !left || (above === 0 && right.at !== at)) return null;
  const part = right.at === left.at ? 1 : (at - left.at) / (right.at - left.at);
  const between = (one: number, other: number) => (part === 1 ? other : one + part * (other - one));
  return { at, L: between(left.L, right.L), M: between(left.M, right.M), S: between(left.S, right.S) };
}

/** Below this size L is zero and the distribution is log-normal: the power form loses its digits there. */
export const flatPower = 1e-8;
