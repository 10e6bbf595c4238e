import { expect, test } from "vitest";
import { type ForestRecord, type ForestRow, forestFigure } from "@/lib/charts";
import { figureCases, inventedSource, textsIn } from "./figure-cases";

const row = (label: string, estimate: number | null, half: number, more: Partial<ForestRow> = {}): ForestRow => ({
  label,
  estimate,
  lower: estimate === null ? null : estimate - half,
  upper: estimate === null ? null : estimate + half,
  n: 120,
  patients: 74,
  tested: true,
  ...more,
});
const ratio = (label: string, estimate: number, times: number, more: Partial<ForestRow> = {}): ForestRow => ({
  ...row(label, estimate, 0, more),
  lower: estimate / times,
  upper: estimate * times,
});

const differences: ForestRecord = {
  ...inventedSource,
  definition: { title: "Nail less frame", sentence: "days at equal gain, difference in means" },
  kind: "difference",
  unit: "days",
  sides: ["fewer days with nails", "more days with nails"],
  rows: [
    row("All", -12.4, 9.1, { heading: "Whole cohort" }),
    row("Adjusted for age and smoking", -9.8, 10.2, { heading: "Whole cohort", detail: "4 left out for a missing covariate" }),
    row("Femur", -14.2, 12.5, { heading: "By bone", n: 80, patients: 51 }),
    row("Tibia", -8.1, 16.6, { heading: "By bone", n: 40, patients: 28, tested: false }),
    row("Humerus", null, 0, { heading: "By bone", n: 2, patients: 1, tested: false, detail: "too few patients" }),
  ],
};
const ratios: ForestRecord = {
  ...differences,
  definition: { title: "Nail over frame", sentence: "ratio of days at equal gain" },
  kind: "ratio",
  unit: "ratio",
  rows: [
    ratio("Days at equal gain", 0.93, 1.12),
    ratio("Unplanned return to theatre", 0.48, 1.9),
    ratio("Nerve deficit", 1.6, 30, { tested: false, n: 14, patients: 9 }),
  ],
};

const records: Readonly<Record<string, ForestRecord>> = {
  differences,
  ratios,
  "one-patient": { ...differences, rows: [row("All", null, 0, { n: 1, patients: 1, tested: false })] },
  "of-patients-no-interval": {
    ...differences,
    of: "person",
    rows: [{ ...row("All", 4, 0, { patients: 12, n: 12 }), lower: null, upper: null }],
  },
  "far-interval": { ...differences, rows: [row("All", 5, 6), row("Few", -20, 900, { n: 4, patients: 3 })] },
  nothing: { ...differences, rows: [] },
};

figureCases(forestFigure, records, {
  unpictured: {
    "5 000 segments in forty rows": {
      ...differences,
      rows: Array.from({ length: 40 }, (_, i) =>
        row(`Split ${i + 1} of the technique factors`, Math.sin(i) * 20, 8 + (i % 7), { n: 5000, patients: 3100 }),
      ),
    },
  },
});

test("what was not tested is hollow, what was is not", () => {
  const scene = forestFigure.layout(differences);
  const hollow = scene.marks.flatMap((mark) =>
    mark.mark === "symbol" && mark.label ? [[mark.label.includes("not tested"), mark.hollow === true]] : [],
  );
  expect(hollow).toEqual([
    [false, false],
    [false, false],
    [false, false],
    [true, true],
  ]);
});

test("a ratio and its inverse lie as far from one", () => {
  const scene = forestFigure.layout({ ...ratios, rows: [ratio("half", 0.5, 1.2), ratio("double", 2, 1.2)] });
  const [half = 0, double = 0] = scene.marks.flatMap((mark) => (mark.mark === "symbol" && mark.label ? [mark.x] : []));
  const one = scene.marks.find((mark) => mark.mark === "rule" && mark.ink === "ink" && mark.x1 === mark.x2 && mark.y2 - mark.y1 > 20);
  const x = one?.mark === "rule" ? one.x1 : Number.NaN;
  expect(x - half).toBeCloseTo(double - x, 6);
});

test("both sides of no difference are named, and numbers stand as the record holds them", () => {
  const texts = textsIn(forestFigure.layout(differences));
  expect(texts).toContain("← fewer days with nails");
  expect(texts).toContain("more days with nails →");
  expect(texts).toContain("−12.4 days (95 % CI −21.5 to −3.3)");
});
