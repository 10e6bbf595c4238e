import { expect, test } from "vitest";
import { counted, decimals, estimateText, indexText, inUnit, listed } from "@/lib/charts";

test("an estimate is written one way everywhere", () => {
  const estimate = { estimate: 31.2, lower: 28.9, upper: 33.5, n: 41, patients: 29 };
  expect(estimateText(estimate, "days/cm")).toBe("31.2 days/cm (95 % CI 28.9 to 33.5; 41 segments in 29 patients)");
});

test("a month is 365.25/12 = 30.4375 days", () => {
  expect(inUnit(30.4375, "months/cm")).toBe(1);
  expect(indexText(45.65625, "months/cm")).toBe("1.50");
  expect(estimateText({ estimate: 60.875, lower: 30.4375, upper: 91.3125, n: 2, patients: 1 }, "months/cm")).toBe(
    "2.00 months/cm (95 % CI 1.00 to 3.00; 2 segments in 1 patient)",
  );
});

test("without an interval the reason stands in its place", () => {
  expect(estimateText({ estimate: 31.2, lower: null, upper: null, n: 1, patients: 1 }, "days/cm")).toBe(
    "31.2 days/cm (too few patients for an interval; 1 segment in 1 patient)",
  );
  expect(estimateText({ estimate: null, lower: null, upper: null, n: 0, patients: 0 }, "days/cm")).toBe(
    "no estimate (0 segments in 0 patients)",
  );
});

test("a minus is a minus sign, and nothing has none", () => {
  expect(decimals(-2.06, 1)).toBe("−2.1");
  expect(decimals(-0.04, 1)).toBe("0.0");
});

test("counts and lists read as prose", () => {
  expect([counted(1, "segment"), counted(0, "segment"), counted(2, "body", "bodies")]).toEqual(["1 segment", "0 segments", "2 bodies"]);
  expect([listed([]), listed(["a"]), listed(["a", "b"]), listed(["a", "b", "c"])]).toEqual(["", "a", "a and b", "a, b and c"]);
});
