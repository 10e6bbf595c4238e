import { expect, test } from "vitest";
import { type CurveGroup, type CurveRecord, cumulativeIncidenceFigure } from "@/lib/charts";
import { allText, figureCases, inventedSource, textsIn } from "./figure-cases";
import { inventedCurve } from "./invented-curves";

const record = (groups: readonly CurveGroup[]): CurveRecord => ({
  ...inventedSource,
  definition: { title: "Unplanned return to theatre", sentence: "first unplanned operation under anaesthesia after the index operation" },
  by: groups.length > 1 ? ["device"] : [],
  competing: "death; a planned removal of the implant ends the time at risk",
  groups,
});
const nail = inventedCurve("Magnetic nail", 140, { seed: 31, middle: 330, share: 0.16 });
const frame = inventedCurve("Circular fixator", 90, { seed: 32, middle: 280, share: 0.4 });

const records: Readonly<Record<string, CurveRecord>> = {
  "two-groups": record([nail, frame]),
  "no-event": record([inventedCurve("All segments", 40, { share: 0, limits: false })]),
  "twelve-segments": record([inventedCurve("All segments", 12, { share: 0.3 })]),
  "one-patient": record([inventedCurve("All segments", 2, { share: 0.5 })]),
  nothing: record([]),
};

figureCases(cumulativeIncidenceFigure, records, {
  unpictured: { "5 000 segments": record([inventedCurve("All segments", 5000, { share: 0.2 })]) },
});

test("the axis starts at nothing and reaches no less than a tenth", () => {
  const percents = textsIn(cumulativeIncidenceFigure.layout(records["no-event"] as CurveRecord));
  expect(percents).toContain("0");
  expect(percents).toContain("10");
  expect(percents).not.toContain("100");
});

test("nothing is said to heal, and what competes is named", () => {
  const scene = cumulativeIncidenceFigure.layout(record([nail, frame]));
  expect(allText(scene)).not.toContain("healed");
  expect(cumulativeIncidenceFigure.caption(record([nail]))).toContain(
    "What competes: death; a planned removal of the implant ends the time at risk.",
  );
});

test("groups are read at one day that both reach", () => {
  const short = { ...frame, curve: (frame.curve ?? []).filter(({ day }) => day < 260) };
  const days = (groups: readonly CurveGroup[]) =>
    textsIn(cumulativeIncidenceFigure.layout(record(groups))).flatMap((text) => /had the event by (\d+) days/.exec(text)?.[1] ?? []);
  expect(days([nail, frame])).toEqual(["365", "365"]);
  expect(days([nail, short])).toEqual(["240", "240"]);
});
