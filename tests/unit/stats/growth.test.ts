import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { lms, lmsInverse, normalQuantile } from "@/lib/stats";
import { check, numbers } from "../../external/stat-checks";
import { expectAsChecked } from "./as-checked";

const inputOf = (id: string) => check(id).input as unknown as { L: number; M: number; S: number; x: number };

describe("LMS", () => {
  test("weight of boys at 9.5 months (growth charts of 2000): z, centile and the fifth centile", () => {
    const { L, M, S } = inputOf("lms-cdc-weight-9mo");
    const table = [{ at: 9.5, L, M, S }];
    const found = numbers(check("lms-cdc-weight-9mo"), "x").map((value) => lms({ value, at: 9.5, table }));
    expectAsChecked("lms-cdc-weight-9mo", {
      z: found.map(({ z }) => z),
      "centile_of_9.7": found[0]?.centile,
      value_at_p5: lmsInverse({ z: normalQuantile(0.05), at: 9.5, table }).value,
    });
  });

  test("L of 0, 1, below 0 and almost 0", () => {
    const { M, S, x } = inputOf("lms-edge-L0-L1");
    const tables = numbers(check("lms-edge-L0-L1"), "L").map((L) => [{ at: 0, L, M, S }]);
    expectAsChecked("lms-edge-L0-L1", {
      z: tables.map((table) => lms({ value: x, at: 0, table }).z),
      value_at_z_minus2: tables.map((table) => lmsInverse({ z: -2, at: 0, table }).value),
    });
  });

  test("there and back again", () => {
    fc.assert(
      fc.property(fc.double({ min: -3, max: 3, noNaN: true }), fc.double({ min: -3, max: 3, noNaN: true }), (z, L) => {
        const table = [{ at: 0, L, M: 100, S: 0.05 }];
        const { value } = lmsInverse({ z, at: 0, table });
        expect(lms({ value: value as number, at: 0, table }).z).toBeCloseTo(z, 9);
      }),
    );
  });

  const table = [
    { at: 2, L: 1, M: 90, S: 0.04 },
    { at: 3, L: 1, M: 100, S: 0.05 },
    { at: 5, L: 1, M: 110, S: 0.05 },
  ];

  test("between rows it is linear, on a row it is the row", () => {
    expect(lms({ value: 95, at: 2.5, table }).z).toBeCloseTo(0, 12);
    expect(lms({ value: 100, at: 3, table }).z).toBe(0);
    expect(lms({ value: 90, at: 2, table }).z).toBe(0);
    expect(lms({ value: 110, at: 5, table }).centile).toBe(50);
  });

  test("outside the table, and where no measurement has the z: null, said why", () => {
    for (const at of [1.9, 5.1]) {
      expect(lms({ value: 90, at, table })).toMatchObject({ z: null, centile: null, notes: [{ because: "outside the growth table" }] });
      expect(lmsInverse({ z: 0, at, table })).toMatchObject({ value: null, notes: [{ because: "outside the growth table" }] });
    }
    expect(lmsInverse({ z: -30, at: 3, table })).toMatchObject({ value: null, notes: [{ because: "no measurement has this z score" }] });
  });

  test("refuses", () => {
    expect(() => lms({ value: 0, at: 2, table })).toThrow("lms requires value above zero, received 0");
    expect(() => lms({ value: 1, at: 2, table: [] })).toThrow("lms requires at least one row of the table, received 0");
    expect(() => lms({ value: 1, at: Number.NaN, table })).toThrow("lms requires finite numbers in at, received NaN at 0");
    expect(() => lms({ value: 1, at: 2, table: [{ at: 1, L: 1, M: 0, S: 1 }] })).toThrow(
      "lms requires M and S above zero, received 0 and 1 in row 0",
    );
    expect(() => lms({ value: 1, at: 2, table: [...table].reverse() })).toThrow("lms requires rows in rising order, received 3 after 5");
    expect(() => lmsInverse({ z: Number.NaN, at: 2, table })).toThrow("lmsInverse requires finite numbers in z, received NaN at 0");
  });
});
