import { expect, test } from "vitest";
import { type NormalPlotGroup, type NormalPlotRecord, normalPlotFigure } from "@/lib/charts";
import { normalPlot } from "@/lib/stats";
import { allText, figureCases, inventedSource, labelsIn } from "./figure-cases";
import { invented } from "./invented";

/** Sums of invented numbers, of which every eighth is only known to be larger. */
function points(n: number, seed = 6): NormalPlotGroup["points"] {
  const next = invented(seed);
  const values = Array.from({ length: n }, () => (next() + next() + next() + next() - 2) * 1.7);
  return normalPlot({ values, event: values.map((_, i) => Number(i % 8 !== 7)) }).map(({ row, value, normal }) => ({
    segment: row + 1,
    residual: value,
    normal,
  }));
}

function group(label: string, own: NormalPlotGroup["points"], more: Partial<NormalPlotGroup> = {}): NormalPlotGroup {
  const n = Math.round(own.length * (8 / 7));
  return {
    label,
    segments: n + 1,
    patients: Math.ceil(n / 1.5),
    n,
    healed: own.length,
    excluded: { "no-gain": 1 },
    scale: 0.31,
    points: own,
    ...more,
  };
}

const record = (groups: readonly NormalPlotGroup[]): NormalPlotRecord => ({
  ...inventedSource,
  by: groups.length > 1 ? ["device"] : [],
  groups,
});
const records: Readonly<Record<string, NormalPlotRecord>> = {
  "one-group": record([group("All segments", points(160))]),
  "three-groups-one-not-fitted": record([
    group("Nail", points(96, 2)),
    group("Frame", points(64, 3)),
    group("Plate", [], { n: 2, segments: 2, excluded: {}, healed: 0, scale: null }),
  ]),
  "twelve-segments": record([group("All segments", points(12))]),
  nothing: record([]),
};

figureCases(normalPlotFigure, records, { unpictured: { "5 000 segments": record([group("All segments", points(5000))]) } });

test("each healed bone is a mark that says its residual and the normal quantile in its place", () => {
  const own = points(24);
  const said = labelsIn(normalPlotFigure.layout(record([group("All", own)]))).filter((label) => label.startsWith("residual "));
  expect(said).toHaveLength(own.length);
  expect(allText(normalPlotFigure.layout(records["three-groups-one-not-fitted"] as NormalPlotRecord))).toContain(
    "too few patients or bones",
  );
});
