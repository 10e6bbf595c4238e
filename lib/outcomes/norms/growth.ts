import { lms } from "@/lib/stats";
import who from "./height-who-2007.json";
import cdc from "./stature-cdc-2000.json";

export type GrowthTable = "cdc-2000" | "who-2007";
export type GrowthSex = "female" | "male";

type Rows = readonly { readonly at: number; readonly L: number; readonly M: number; readonly S: number }[];

const rowsOf = (rows: readonly (readonly number[])[]): Rows =>
  rows.map(([at, L, M, S]) => ({ at: at as number, L: L as number, M: M as number, S: S as number }));

const tables: Readonly<Record<GrowthTable, { readonly female: Rows; readonly male: Rows; readonly from: number; readonly to: number }>> = {
  "cdc-2000": { female: rowsOf(cdc.female), male: rowsOf(cdc.male), from: 24, to: 240 },
  "who-2007": { female: rowsOf(who.female), male: rowsOf(who.male), from: 60, to: 228 },
};

export const growthSources = { "cdc-2000": cdc.source, "who-2007": who.source } as const;

export type GrowthScore = {
  readonly z: number;
  readonly centile: number;
  /** Older than the table: held against its last age, which is no age-matched score. */
  readonly againstLastAge: boolean;
};

/**
 * z and centile of stature. Adults are held against the last age of the table, and the answer says so; younger than the table: `null`.
 * Between rows L, M and S are interpolated linearly; the first table's rows stand at mid-month.
 * @param ageMonths age in months (years × 12)
 * @throws RangeError when stature isn't above zero
 */
export function statureScore({
  statureMm,
  ageMonths,
  sex,
  table,
}: {
  statureMm: number;
  ageMonths: number;
  sex: GrowthSex;
  table: GrowthTable;
}): GrowthScore | null {
  const { from, to, ...bySex } = tables[table];
  if (ageMonths < from) return null;
  const { z, centile } = lms({ value: statureMm / 10, at: Math.min(ageMonths, to), table: bySex[sex] });
  return z === null || centile === null ? null : { z, centile, againstLastAge: ageMonths > to };
}
