import { expect, test } from "vitest";
import { type ProportionGroup, type ProportionMark, type ProportionRecord, proportionFigure } from "@/lib/charts";
import { allText, figureCases, inventedSource, labelsIn } from "./figure-cases";
import { invented } from "./invented";

function marks(n: number, { seed = 4, middle = 0.79, shift = 0.05, spread = 0.03, derived = 0.3 } = {}): ProportionMark[] {
  const next = invented(seed);
  return Array.from({ length: n }, (_, index) => {
    const before = middle + (next() + next() + next() - 1.5) * spread;
    const after = before + shift + (next() - 0.5) * spread;
    return {
      person: index + 1,
      before,
      after,
      beforeHow: next() < derived / 4 ? "derived" : "measured",
      afterHow: next() < derived ? "derived" : "measured",
    };
  });
}

function group(label: string, all: readonly ProportionMark[], more: Partial<ProportionGroup> = {}): ProportionGroup {
  const counts = { n: all.length, patients: all.length };
  return {
    label,
    segments: all.length * 2,
    patients: all.length + 3,
    n: all.length,
    excluded: { "one-side-only": 2, "not-recorded": 1 },
    before: { estimate: 0.791, lower: 0.784, upper: 0.798, ...counts },
    after: { estimate: 0.843, lower: 0.835, upper: 0.851, ...counts },
    change: { estimate: 0.052, lower: 0.047, upper: 0.057, ...counts },
    norm: { from: 0.75, to: 0.81, label: "standing films of adults, mean ± 1 SD" },
    marks: all,
    ...more,
  };
}

const none = { estimate: null, lower: null, upper: null, n: 0, patients: 0 };
const empty = group("Femora", [], { before: none, after: none, change: none });
const record = (groups: readonly ProportionGroup[], more: Partial<ProportionRecord> = {}): ProportionRecord => ({
  ...inventedSource,
  definition: { title: "Tibia : femur", sentence: "length of the tibia over length of the femur, mean of left and right" },
  by: groups.length > 1 ? ["bones"] : [],
  unit: "ratio",
  groups,
  ...more,
});
const differences = {
  before: { estimate: 24, lower: 19, upper: 29, n: 18, patients: 18 },
  after: { estimate: 3, lower: 1, upper: 5, n: 18, patients: 18 },
};

const records: Readonly<Record<string, ProportionRecord>> = {
  "two-groups-and-an-empty-one": record([
    group("Tibiae", marks(24)),
    group("Both", marks(16, { seed: 8, shift: 0.004 }), { norm: null }),
    empty,
  ]),
  "a-hundred": record([group("All patients", marks(110))]),
  "differences-mm": record(
    [
      group("All patients", marks(18, { middle: 26, shift: -22, spread: 14, derived: 0 }), {
        ...differences,
        change: { estimate: -21, lower: -25, upper: -17, n: 18, patients: 18 },
        norm: null,
      }),
    ],
    { unit: "mm", definition: { title: "Left less right", sentence: "left less right of the same bone" } },
  ),
  "one-patient": record([
    group("All patients", marks(1), {
      before: { estimate: 0.78, lower: null, upper: null, n: 1, patients: 1 },
      after: { estimate: 0.83, lower: null, upper: null, n: 1, patients: 1 },
      change: { estimate: 0.05, lower: null, upper: null, n: 1, patients: 1 },
    }),
  ]),
  nothing: record([]),
};

figureCases(proportionFigure, records, { unpictured: { "5 000 patients": record([group("All patients", marks(5000))]) } });

test.each([12, 5000])("each of %i patients is a mark that says both values and where they come from", (n) => {
  const all = marks(n);
  const said = labelsIn(proportionFigure.layout(record([group("All", all)]))).filter((label) => label.includes(" after ("));
  expect(said.sort()).toEqual(
    all.map((mark) => `${mark.before.toFixed(3)} before (${mark.beforeHow}), ${mark.after.toFixed(3)} after (${mark.afterHow})`).sort(),
  );
});

test("derived readings differ by shape and by line, and are counted", () => {
  const all: ProportionMark[] = [
    { person: 1, before: 0.78, after: 0.83, beforeHow: "measured", afterHow: "measured" },
    { person: 2, before: 0.79, after: 0.84, beforeHow: "measured", afterHow: "derived" },
    { person: 3, before: 0.8, after: 0.85, beforeHow: "derived", afterHow: "measured" },
  ];
  const scene = proportionFigure.layout(record([group("All", all)]));
  const ends = scene.marks.flatMap((mark) => (mark.mark === "symbol" && mark.label?.includes("before (") ? [mark.shape] : []));
  expect(ends).toEqual(["disc", "diamond", "disc"]);
  const ways = scene.marks.flatMap((mark) => (mark.mark === "path" && mark.ink === "muted" ? [mark.dash] : []));
  expect(ways.sort()).toEqual(["dot", "dot", "solid"]);
  expect(allText(scene)).toContain("derived from segments, not measured: 1 of 3 before, 1 of 3 after");
});

test("a norm is drawn only where one was chosen", () => {
  const bands = (of: ProportionRecord) =>
    proportionFigure.layout(of).marks.filter((mark) => mark.mark === "band" && mark.label !== undefined).length;
  expect(bands(record([group("All", marks(9))]))).toBe(1);
  expect(bands(record([group("All", marks(9), { norm: null })]))).toBe(0);
  expect(proportionFigure.caption(record([group("All", marks(9), { norm: null })]))).toContain("No norm is drawn");
});
