import { expect, test } from "vitest";
import { type FollowUpGroup, type FollowUpRecord, type FollowUpWindowCounts, followUpFigure } from "@/lib/charts";
import { figureCases, inventedSource, labelsIn, textsIn } from "./figure-cases";

const window = (
  label: string,
  [seen, due, lost, dead, notYetDue]: readonly [number, number, number, number, number],
): FollowUpWindowCounts => ({
  label,
  seen,
  due,
  lost,
  dead,
  notYetDue,
});

function group(label: string, windows: readonly FollowUpWindowCounts[], more: Partial<FollowUpGroup> = {}): FollowUpGroup {
  const [first] = windows;
  const n = first ? first.seen + first.due + first.lost + first.dead + first.notYetDue : 0;
  return { label, segments: n + 2, patients: Math.ceil(n / 1.6) + 1, n, excluded: { "not-lengthening": 2 }, windows, ...more };
}

const record = (groups: readonly FollowUpGroup[], more: Partial<FollowUpRecord> = {}): FollowUpRecord => ({
  ...inventedSource,
  definition: { title: "Follow-up", sentence: "a visit within the window, from surgery" },
  by: groups.length > 1 ? ["device"] : [],
  groups,
  ...more,
});

const nail = group("Magnetic nail", [
  window("3 months", [118, 5, 0, 0, 4]),
  window("6 months", [104, 9, 3, 0, 11]),
  window("12 months", [81, 14, 8, 1, 23]),
  window("24 months", [40, 12, 15, 2, 58]),
]);
const frame = group("Circular fixator", [
  window("3 months", [60, 1, 0, 0, 0]),
  window("6 months", [55, 4, 2, 0, 0]),
  window("12 months", [44, 8, 6, 1, 2]),
  window("24 months", [0, 0, 0, 0, 61]),
]);

const records: Readonly<Record<string, FollowUpRecord>> = {
  "two-groups-and-an-empty-one": record([nail, frame, group("Plate", [], { segments: 2, patients: 1 })]),
  "twelve-segments": record([group("All segments", [window("12 months", [7, 2, 1, 0, 2])])]),
  "one-patient": record([group("All patients", [window("12 months", [1, 0, 0, 0, 0])], { patients: 1, segments: 1, excluded: {} })], {
    of: "person",
  }),
  nothing: record([]),
};

figureCases(followUpFigure, records, {
  unpictured: { "5 000 segments": record([group("All segments", [window("12 months", [3600, 402, 297, 1, 700])])]) },
});

test("pieces are as long as their numbers, and the five make the bar", () => {
  const scene = followUpFigure.layout(record([group("All", [window("12 months", [60, 20, 10, 5, 5])])]));
  const widthOf = (words: string) => {
    const mark = scene.marks.find((one) => "label" in one && one.label === `12 months: ${words}`);
    if (mark?.mark === "band") return mark.width;
    const [left = 0, , right = 0] = mark?.mark === "path" ? [...mark.d.matchAll(/-?[\d.]+/g)].map(Number) : [];
    return right - left;
  };
  const unit = widthOf("5 of 100 dead");
  expect(widthOf("60 of 100 seen") / unit).toBeCloseTo(12, 6);
  expect(widthOf("20 of 100 due, not seen") / unit).toBeCloseTo(4, 6);
  expect(widthOf("10 of 100 lost") / unit).toBeCloseTo(2, 6);
  expect(widthOf("5 of 100 not yet due") / unit).toBeCloseTo(1, 6);
});

test("each window says all its numbers, the dead and the not yet due apart", () => {
  expect(textsIn(followUpFigure.layout(record([nail])))).toContain(
    "81 seen of 103 seen, due or lost; 14 due, not seen; 8 lost; 1 dead; 23 not yet due",
  );
  expect(labelsIn(followUpFigure.layout(record([nail])))).toContain("24 months: 58 of 127 not yet due");
});

test("a window that does not add up is refused", () => {
  expect(() =>
    followUpFigure.layout(record([group("All", [window("6 months", [10, 0, 0, 0, 0]), window("12 months", [9, 0, 0, 0, 0])])])),
  ).toThrow(new RangeError("requireSums requires 10 in each window of All, received 9"));
});
