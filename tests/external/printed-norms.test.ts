import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { boysTibiaToFemur, predictedRatio, proportionNorms, statureScore } from "@/lib/outcomes";
import who from "@/lib/outcomes/norms/height-who-2007.json";
import cdc from "@/lib/outcomes/norms/stature-cdc-2000.json";
import { cr2Difference, lmsInverse, normalQuantile, welch } from "@/lib/stats";

type Sex = "female" | "male";
type Printed = {
  readonly growthTables: { readonly rows: Readonly<Record<string, { readonly rows: number; readonly sha256: string }>> };
  readonly cdcCentiles: { readonly centiles: readonly number[]; readonly rows: readonly (readonly [Sex, number, ...number[]])[] };
  readonly whoThresholds: { readonly rows: readonly (readonly [Sex, number, number, number])[] };
  readonly boysLongBones: { readonly rows: readonly (readonly [age: number, femurCm: number, tibiaCm: number])[] };
  readonly legs: { readonly femurMm: number; readonly tibiaMm: number; readonly rows: readonly (readonly [number, number, number])[] };
  readonly trunk: Readonly<Record<Sex, Trunk>>;
  readonly arms: { readonly retrogradeFemur: Arm; readonly tibia: Arm; readonly p: number };
};
type Trunk = {
  readonly statureMm: number;
  readonly sittingHeightMm: number;
  readonly armSpanMm: number;
  readonly rows: readonly (readonly [number, number, number, number, number])[];
};
type Arm = { readonly n: number; readonly mean: number; readonly sd: number };

/** Figures from outside, each with its source beside it (printed-norms.json). */
const printed = JSON.parse(readFileSync(new URL("./printed-norms.json", import.meta.url), "utf8")) as Printed;
const tables = { "cdc-2000": cdc, "who-2007": who } as const;

describe.each([
  ["cdc-2000", "female"],
  ["cdc-2000", "male"],
  ["who-2007", "female"],
  ["who-2007", "male"],
] as const)("the growth table %s, %s", (table, sex) => {
  const rows: readonly (readonly number[])[] = tables[table][sex];

  test("holds every row of the published file, digit by digit", () => {
    const own = rows.map((row) => row.map(String).join(",")).join("\n");
    const { rows: n, sha256 } = printed.growthTables.rows[`${table} ${sex}`] ?? {};
    expect(rows).toHaveLength(n ?? 0);
    expect(createHash("sha256").update(own).digest("hex")).toBe(sha256);
  });

  test("at every row the median is the 50th centile, and ±2 deviations are found again", () => {
    for (const [at = 0, L = 0, M = 0, S = 0] of rows.filter(([age = 0]) => table === "cdc-2000" || age <= 228)) {
      expect(statureScore({ statureMm: M * 10, ageMonths: at, sex, table })?.centile).toBeCloseTo(50, 9);
      for (const z of [-2, 2]) {
        // x = M (1 + L S z)^(1/L), no row has an L of 0
        const cm = M * (1 + L * S * z) ** (1 / L);
        expect(statureScore({ statureMm: cm * 10, ageMonths: at, sex, table })?.z).toBeCloseTo(z, 9);
      }
    }
  });
});

describe("printed centiles of stature (CDC 2000, seven decimals of a cm)", () => {
  const { centiles, rows } = printed.cdcCentiles;
  test.each(rows.map(([sex, at, ...cm]) => ({ sex, at, cm })))("$sex of $at months", ({ sex, at, cm }) => {
    const table = cdc[sex].map(([age = 0, L = 0, M = 0, S = 0]) => ({ at: age, L, M, S }));
    for (const [i, centile] of centiles.entries()) {
      const own = lmsInverse({ z: normalQuantile(centile / 100), at, table }).value;
      expect(Math.abs((own ?? Number.NaN) - (cm[i] ?? 0)), `P${centile}`).toBeLessThanOrEqual(5.1e-7);
      expect(statureScore({ statureMm: (cm[i] ?? 0) * 10, ageMonths: at, sex, table: "cdc-2000" })?.centile).toBeCloseTo(centile, 5);
    }
  });
});

test.each(printed.whoThresholds.rows)("WHO 2007, %s of %d months: z %d is %d cm", (sex, ageMonths, z, cm) => {
  expect(statureScore({ statureMm: cm * 10, ageMonths, sex, table: "who-2007" })?.z).toBeCloseTo(z, 3);
});

describe("boys' tibia to femur by age (means on film)", () => {
  test.each(printed.boysLongBones.rows)("%d years: femur %d cm, tibia %d cm", (age, femur, tibia) => {
    expect(boysTibiaToFemur(age)).toBe(tibia / femur);
  });
  test("falls over the years of growth, from above 0.80 to below 0.80", () => {
    const ratios = printed.boysLongBones.rows.map(([, femur, tibia]) => tibia / femur);
    expect(ratios[0]).toBeCloseTo(0.801, 3);
    expect(ratios.at(-1)).toBeCloseTo(0.79, 3);
  });
});

test.each(printed.legs.rows)("tibia to femur after %d mm on the femora and %d mm on the tibiae: %d", (femurMm, tibiaMm, ratio) => {
  const before = { femurMm: printed.legs.femurMm, tibiaMm: printed.legs.tibiaMm, statureMm: 0, sittingHeightMm: 0, armSpanMm: 0 };
  expect(predictedRatio("proportion-tibia-femur", before, { femurMm, tibiaMm })).toBeCloseTo(ratio, 3);
});

describe.each(["male", "female"] as const)("%s adults: how far so many mm move the ratios, trunk and arms unchanged", (sex) => {
  const { rows, ...body } = printed.trunk[sex];
  const norm = proportionNorms.find((one) => one.of === "proportion-sitting-height" && one.sex === sex);
  test.each(rows)("%d mm", (gain, sitting, z, span, leg) => {
    const lengthened = (id: Exclude<Parameters<typeof predictedRatio>[0], "proportion-tibia-femur">) =>
      predictedRatio(id, { ...body, femurMm: 0, tibiaMm: 0 }, { femurMm: gain, tibiaMm: 0 });
    // four printed decimals, from means printed to a tenth of a mm
    expect(Math.abs(lengthened("proportion-sitting-height") - sitting)).toBeLessThanOrEqual(0.0001);
    expect(lengthened("proportion-span")).toBeCloseTo(span, 3);
    expect(lengthened("proportion-leg")).toBeCloseTo(leg, 3);
    const [mean, sd] = [norm?.mean ?? Number.NaN, norm?.sd ?? Number.NaN];
    // two printed decimals, from a mean and an SD of four
    const own = (lengthened("proportion-sitting-height") - mean) / sd;
    expect(Math.abs(own - z)).toBeLessThanOrEqual(0.005 + (0.0001 + 0.00005 * Math.abs(z)) / sd);
  });
});

/** So many values with exactly this mean and standard deviation. */
function armOf({ n, mean, sd }: Arm): number[] {
  const raw = Array.from({ length: n }, (_, i) => i - (n - 1) / 2);
  const spread = Math.sqrt(raw.reduce((sum, value) => sum + value ** 2, 0) / (n - 1));
  return raw.map((value) => mean + (value / spread) * sd);
}

test("Welch's p of two printed arms, 33.5 (14.5) of 67 against 41.0 (17.4) of 55, is the printed 0.012; our clustered difference has its standard error", () => {
  const [a, b] = [armOf(printed.arms.retrogradeFemur), armOf(printed.arms.tibia)];
  const rows = { values: [...a, ...b], group: [...a.map(() => "a"), ...b.map(() => "b")], patient: [...a, ...b].map((_, i) => i) };
  const { p, statistic, df, se } = welch(rows);
  expect(p).toBeCloseTo(printed.arms.p, 3);
  // R: t.test from the summaries gives t -2.55114 on 105.156 df
  expect(statistic).toBeCloseTo(-2.55114, 5);
  expect(df).toBeCloseTo(105.156, 3);
  expect(cr2Difference(rows).se).toBeCloseTo(se ?? Number.NaN, 12);
});
