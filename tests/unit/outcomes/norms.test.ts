import { describe, expect, test } from "vitest";
import { boysTibiaToFemur, predictedRatio, statureScore } from "@/lib/outcomes";

describe("stature for age", () => {
  // CDC growth charts 2000, printed centiles of single rows (P3 P50 P97, cm); tolerance: the printed seven decimals of a cm
  test.each([
    ["male", 120.5, 126.6677753, 138.8234114, 151.5294179],
    ["male", 180.5, 154.6055622, 170.139255, 184.1269767],
    ["male", 240, 163.3333326, 176.8492322, 190.1943135],
    ["female", 84.5, 111.868361, 121.7616844, 132.7338033],
    ["female", 144.5, 137.4380555, 151.4865636, 165.1502647],
    ["female", 240, 151.1111674, 163.338251, 175.4671292],
  ] as const)("CDC 2000, %s of %d months", (sex, ageMonths, p3, p50, p97) => {
    const centile = (cm: number) => statureScore({ statureMm: cm * 10, ageMonths, sex, table: "cdc-2000" })?.centile;
    expect(centile(p3)).toBeCloseTo(3, 4);
    expect(centile(p50)).toBeCloseTo(50, 4);
    expect(centile(p97)).toBeCloseTo(97, 4);
  });

  // z values printed at two decimals in the survey file that the WHO's own package is tested with
  test.each([
    ["male", 166.59, 153.7, -1.13],
    ["male", 184.09, 181.7, 1.43],
    ["male", 172.42, 166.6, 0.14],
    ["male", 182.18, 192.1, 2.86],
    ["male", 212.19, 160.8, -2.01],
    ["female", 133.88, 144.3, -0.25],
    ["female", 193.95, 145.9, -2.47],
    ["female", 221.31, 144.3, -2.86],
    ["female", 162.4, 141.3, -2.46],
    ["female", 99.0, 141.5, 2.29],
  ] as const)("WHO 2007, %s of %d months and %d cm: z %d", (sex, ageMonths, cm, z) => {
    expect(statureScore({ statureMm: cm * 10, ageMonths, sex, table: "who-2007" })?.z).toBeCloseTo(z, 2);
  });

  test("adults are held against the last age, and it is said", () => {
    expect(statureScore({ statureMm: 1700, ageMonths: 480, sex: "male", table: "cdc-2000" })).toMatchObject({ againstLastAge: true });
    expect(statureScore({ statureMm: 1700, ageMonths: 480, sex: "male", table: "cdc-2000" })?.z).toBeCloseTo(-0.95622, 5);
  });

  test("younger than the table has no score", () => {
    expect(statureScore({ statureMm: 900, ageMonths: 59, sex: "male", table: "who-2007" })).toBeNull();
  });
});

describe("proportion after lengthening, by arithmetic on printed means", () => {
  // Aitken 2021: adult means femur 50.0 cm, tibia 39.0 cm
  const legs = { femurMm: 500, tibiaMm: 390, statureMm: 1756.2, sittingHeightMm: 918.3, armSpanMm: 1814.2 };
  test.each([
    [50, 0, 0.709],
    [0, 50, 0.88],
    [50, 40, 0.782],
    [80, 60, 0.776],
  ])("tibia : femur after %d mm on the femur and %d mm on the tibia", (femurMm, tibiaMm, ratio) => {
    expect(predictedRatio("proportion-tibia-femur", legs, { femurMm, tibiaMm })).toBeCloseTo(ratio, 3);
  });

  // ANSUR II means of men: stature 175.62, sitting height 91.83, span 181.42 cm
  test.each([
    [0, 0.5229, 1.033, 0.477],
    [50, 0.5084, 1.004, 0.492],
    [67, 0.5037, 0.995, 0.496],
    [100, 0.4947, 0.977, 0.505],
  ])("men's sitting height, span and leg ratios after %d mm", (gain, sitting, span, leg) => {
    const half = { femurMm: gain, tibiaMm: 0 };
    expect(predictedRatio("proportion-sitting-height", legs, half)).toBeCloseTo(sitting, 4);
    expect(predictedRatio("proportion-span", legs, half)).toBeCloseTo(span, 3);
    expect(predictedRatio("proportion-leg", legs, half)).toBeCloseTo(leg, 3);
  });
});

test("boys' tibia to femur stands between the dry-bone and film norms of adults at the end of growth", () => {
  // Anderson, Messner, Green 1964, as reprinted: the means at 1 and 18 years
  expect(boysTibiaToFemur(1)).not.toBeNull();
  expect(boysTibiaToFemur(18)).toBeGreaterThan(0.7);
  expect(boysTibiaToFemur(19)).toBeNull();
});
