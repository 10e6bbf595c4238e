import { expect, test } from "vitest";
import { type CurveGroup, type CurveRecord, consolidationCurveFigure } from "@/lib/charts";
import { allText, figureCases, inventedSource, labelsIn, textsIn } from "./figure-cases";
import { inventedCurve } from "./invented-curves";

const record = (groups: readonly CurveGroup[], more: Partial<CurveRecord> = {}): CurveRecord => ({
  ...inventedSource,
  definition: { title: "Time to consolidation", sentence: "days from surgery to three of four cortices bridged, healing however obtained" },
  by: groups.length > 1 ? ["gain"] : [],
  groups,
  ...more,
});
const median = { medianDays: { estimate: 171, lower: 160, upper: 184 } };
const bands = [
  inventedCurve("Below 30 mm", 40, { seed: 5, middle: 120, more: { ...median, medianGainMm: 24 } }),
  inventedCurve("30 to 49 mm", 90, { seed: 6, middle: 160, more: { ...median, medianGainMm: 41 } }),
  inventedCurve("50 to 79 mm", 70, { seed: 7, middle: 210, more: { ...median, medianGainMm: 62 } }),
  inventedCurve("80 mm and more", 18, {
    seed: 8,
    middle: 290,
    limits: false,
    more: { medianDays: { estimate: null, lower: 250, upper: null } },
  }),
];
const empty: CurveGroup = { label: "Humerus", segments: 2, patients: 1, n: 0, excluded: { "bone-apart": 2 } };

/** By hand: ten rows, events on days 30, 60 and 90, one followed to 70 and no further, the rest to 120. */
const byHand: CurveGroup = {
  label: "By hand",
  segments: 10,
  patients: 8,
  n: 10,
  events: 3,
  excluded: {},
  curve: [
    { day: 30, atRisk: 10, estimate: 0.1, lower: 0.02, upper: 0.4, censored: 0 },
    { day: 60, atRisk: 9, estimate: 0.2, lower: 0.06, upper: 0.5, censored: 0 },
    { day: 70, atRisk: 8, estimate: 0.2, lower: 0.06, upper: 0.5, censored: 1 },
    { day: 90, atRisk: 7, estimate: 0.31, lower: 0.12, upper: 0.62, censored: 0 },
    { day: 120, atRisk: 6, estimate: 0.31, lower: 0.12, upper: 0.62, censored: 6 },
  ],
};

const records: Readonly<Record<string, CurveRecord>> = {
  "gain-bands": record(bands),
  "two-groups-and-an-empty-one": record([bands[1] as CurveGroup, bands[2] as CurveGroup, empty]),
  "twelve-segments": record([inventedCurve("All segments", 12, { limits: false })]),
  "one-patient": record([inventedCurve("All segments", 1)]),
  "six-groups": record(
    [1, 2, 3, 4, 5, 6].map((quarter) => inventedCurve(`Quarter ${quarter} of the year`, 30 + quarter, { seed: quarter + 20 })),
  ),
  nothing: record([]),
};

figureCases(consolidationCurveFigure, records, {
  unpictured: { "5 000 segments": record([inventedCurve("Nail", 2500), inventedCurve("Frame", 2500, { seed: 9 })]) },
});

const rowOf = (texts: readonly string[], from: number) => texts.slice(from).filter((text) => /^\d+$/.test(text));

// ticks every 15 days: at 75 and 90 the rows of days 30, 60 and 70 are gone, at 105 and 120 that of day 90 too
test("numbers at risk stand under the axis: 10 at the start, 7 just before day 90", () => {
  const texts = textsIn(consolidationCurveFigure.layout(record([byHand])));
  expect(rowOf(texts, texts.indexOf("at risk"))).toEqual(["10", "10", "10", "9", "9", "7", "7", "6", "6"]);
});

test("each number of the axis says the share by then, its limits and the numbers at risk", () => {
  const labels = labelsIn(consolidationCurveFigure.layout(record([byHand])));
  expect(labels).toContain("20 % (95 % CI 6.0 to 50) healed by 60 days; 9 at risk");
  expect(labels).toContain("31 % (95 % CI 12 to 62) healed by 120 days; 6 at risk");
  expect(labels).toContain("1 segment followed to 70 days and no further");
});

test("a curve is cut where fewer than five are at risk, and the cut part is nowhere", () => {
  const tail = { day: 150, atRisk: 4, estimate: 0.5, lower: 0.2, upper: 0.8, censored: 3 };
  const longer = { ...byHand, curve: [...(byHand.curve ?? []), tail] };
  const scene = consolidationCurveFigure.layout(record([longer]));
  expect(labelsIn(scene).some((label) => label.includes("150") || label.includes("50 %"))).toBe(false);
  expect(scene.marks.filter((mark) => mark.mark === "path")).toEqual(
    consolidationCurveFigure.layout(record([byHand])).marks.filter((mark) => mark.mark === "path"),
  );
});

test("fewer than five at risk from the start: no curve, and the figure says so", () => {
  const text = allText(consolidationCurveFigure.layout(records["one-patient"] as CurveRecord));
  expect(text).toContain("fewer than 5 at risk: no curve");
  expect(text).not.toContain("at risk 1");
});

test("a median that is not reached is said to be so", () => {
  const texts = allText(consolidationCurveFigure.layout(record([bands[3] as CurveGroup])));
  expect(texts).toContain("median not reached");
  expect(allText(consolidationCurveFigure.layout(record([bands[0] as CurveGroup])))).toContain(
    "half healed by 171 days (95 % CI 160 to 184)",
  );
});

test("of several groups with one curve the head of that one shows its line", () => {
  const few = inventedCurve("Few", 3);
  const lines = (groups: readonly CurveGroup[]) =>
    consolidationCurveFigure.layout(record(groups)).marks.filter((mark) => mark.mark === "rule" && mark.ink === "series1" && mark.x2 <= 30);
  expect(lines([byHand, few])).toHaveLength(1);
  expect(lines([byHand])).toHaveLength(0);
});

test("groups differ by line as well as by ink", () => {
  const scene = consolidationCurveFigure.layout(record(bands));
  const dashes = scene.marks.flatMap((mark) => (mark.mark === "path" && mark.weight === 2 ? [mark.dash] : []));
  expect(new Set(dashes).size).toBe(bands.length);
});

test("what competes is named in the caption", () => {
  expect(consolidationCurveFigure.caption(record(bands, { competing: "further bone surgery, amputation, death" }))).toContain(
    "What competes: further bone surgery, amputation, death.",
  );
});
