import { expect, test } from "vitest";
import { type DistributionRecord, distributionFigure, type Mark } from "@/lib/charts";
import { allText, figureCases, labelsIn, textsIn } from "./figure-cases";
import { inventedDistribution, inventedNumbers, inventedRows } from "./invented-distribution";

const none = { estimate: null, lower: null, upper: null, n: 0, patients: 0 };
const femur = inventedNumbers("Femur", inventedRows(180, { whole: true }));
const tibia = inventedNumbers("Tibia", inventedRows(120, { seed: 9, middle: -4, whole: true }));
const humerus = inventedNumbers("Humerus", [], {
  segments: 2,
  patients: 2,
  excluded: { "bone-apart": 2 },
  mean: none,
  median: { estimate: null },
  quartiles: { lower: null, upper: null },
});
const persons = inventedRows(60, { middle: 0.78, spread: 0.03 }).map((row) => ({ ...row, person: row.segment, segment: null }));
const nearOne = {
  mean: { estimate: 0.93, lower: 0.91, upper: 0.95, n: 210, patients: 120 },
  median: { estimate: 0.96 },
  quartiles: { lower: 0.88, upper: 1 },
};
const tolerance = { from: -5, to: 5, label: "within ±5 mm" };

const records: Readonly<Record<string, DistributionRecord>> = {
  "two-groups-and-an-empty-one": inventedDistribution([femur, tibia, humerus], { band: tolerance }),
  "twelve-segments": inventedDistribution([inventedNumbers("All segments", inventedRows(12))]),
  "one-patient": inventedDistribution([
    inventedNumbers("All segments", inventedRows(2, { middle: 6, spread: 2 }), {
      mean: { estimate: 5.8, lower: null, upper: null, n: 2, patients: 1 },
      median: { estimate: 5.8 },
      quartiles: { lower: null, upper: null },
    }),
  ]),
  "far-values-and-a-wide-interval": inventedDistribution([
    inventedNumbers("All segments", [
      ...inventedRows(96),
      { person: 90, segment: 97, value: -80 },
      { person: 91, segment: 98, value: 140 },
    ]),
    inventedNumbers("Frame, then nail, in the same anaesthetic, with a name that is far too long for one line", inventedRows(6), {
      mean: { estimate: 2, lower: -60, upper: 64, n: 6, patients: 3 },
    }),
  ]),
  ratios: inventedDistribution(
    [
      inventedNumbers("Both tibiae and femora", persons, {
        mean: { estimate: 0.7812, lower: 0.7731, upper: 0.7893, n: 60, patients: 60 },
        median: { estimate: 0.78 },
        quartiles: { lower: 0.762, upper: 0.804 },
      }),
    ],
    {
      unit: "ratio",
      definition: { title: "Tibia : femur after", sentence: "tibia over femur, mean of left and right, at the last measure" },
      band: { from: 0.75, to: 0.81, label: "norm, mean ± 1 SD" },
    },
  ),
  "a-heap-of-equal-values": inventedDistribution(
    [
      inventedNumbers(
        "Nail",
        [
          ...inventedRows(120, { middle: 0.9, spread: 0.05 }),
          ...inventedRows(90, { middle: 1, spread: 0 }).map((row) => ({ ...row, segment: row.segment + 500 })),
        ],
        nearOne,
      ),
      inventedNumbers("Frame", inventedRows(9, { middle: 0.85, spread: 0.06, seed: 3 }), nearOne),
    ],
    { unit: "mm/day", definition: { title: "Distraction rate", sentence: "mm gained a day of distraction" } },
  ),
  nothing: inventedDistribution([]),
};

figureCases(distributionFigure, records, {
  unpictured: {
    "5 000 segments": inventedDistribution([inventedNumbers("All segments", inventedRows(5000))]),
    "seven groups": inventedDistribution(
      ["Q1", "Q2", "Q3", "Q4", "Q5", "Q6", "Q7"].map((label, i) => inventedNumbers(label, inventedRows(40, { seed: i + 3 }))),
    ),
  },
});

test.each([12, 480, 5000])("each of %i values is a mark that says its value", (n) => {
  const rows = inventedRows(n, { whole: true });
  const said = labelsIn(distributionFigure.layout(inventedDistribution([inventedNumbers("All", rows)]))).filter((label) =>
    /^−?\d+ mm$/.test(label),
  );
  const asWritten = rows.map(({ value }) => `${value === 0 ? 0 : value} mm`.replace("-", "−"));
  expect([...said].sort()).toEqual(asWritten.sort());
});

test("mean, counts and reasons are printed as the record holds them, and the counts add up", () => {
  const scene = distributionFigure.layout(inventedDistribution([femur, tibia]));
  expect(textsIn(scene)).toContain("−1.7 mm (95 % CI −3.1 to −0.3; 180 segments in 90 patients)");
  expect(textsIn(scene)).toContain("183 segments in 91 patients: 180 measured, 3 left out (2 no target and 1 no gain)");
});

test("in cm the same values stand at the same places", () => {
  const record = inventedDistribution([femur]);
  const places = (unit: string) =>
    distributionFigure
      .layout(record, { unit })
      .marks.flatMap((mark: Mark) => (mark.mark === "symbol" && mark.shape === "disc" ? [mark.x.toFixed(6)] : []));
  expect(places("cm")).toEqual(places("mm"));
  expect(allText(distributionFigure.layout(record, { unit: "cm" }))).toContain("−0.17 cm (95 % CI −0.31 to −0.03");
});

test("a measure of persons counts patients", () => {
  const scene = distributionFigure.layout(records.ratios as DistributionRecord);
  expect(allText(scene)).toContain("0.781 (95 % CI 0.773 to 0.789; 60 patients)");
  expect(allText(scene)).toContain("a patient");
});

test("an interval that runs over the axis has no bracket there", () => {
  const wide = distributionFigure.layout(records["far-values-and-a-wide-interval"] as DistributionRecord);
  const lines = wide.marks.flatMap((mark) => (mark.mark === "path" && mark.ink === "ink" && mark.weight === 1.5 ? [mark.d] : []));
  // key, first group with both brackets, second group with neither
  expect(lines.map((d) => d.split("M").length - 2)).toEqual([2, 2, 0]);
});

test("a heap of equal values makes no specks of the other marks", () => {
  const scene = distributionFigure.layout(records["a-heap-of-equal-values"] as DistributionRecord);
  const sizes = scene.marks.flatMap((mark) => (mark.mark === "symbol" && mark.shape === "disc" && mark.label ? [mark.size] : []));
  expect(Math.min(...sizes)).toBeGreaterThan(1.8);
});
