import { expect, test } from "vitest";
import { type FlowRecord, type FlowStep, flowFigure } from "@/lib/charts";
import { figureCases, inventedSource, textsIn } from "./figure-cases";

const stays = (words: string, segments: number, patients: number): FlowStep => ({ kind: "stays", words, segments, patients });
const leaves = (words: string, segments: number, patients: number): FlowStep => ({ kind: "leaves", words, segments, patients });
const record = (steps: readonly FlowStep[]): FlowRecord => ({
  ...inventedSource,
  definition: { title: "Surgery to consolidation", sentence: "days from surgery to consolidation per cm gained" },
  steps,
});

const whole = [
  stays("in the registry", 480, 262),
  leaves("not femur", 190, 102),
  leaves("not magnetic nail or motorised nail with its receiver under the skin", 64, 41),
  stays("in the cohort", 226, 131),
  leaves("still distracting", 6, 5),
  leaves("healing date missing", 11, 9),
  leaves("gain under 10 mm, an index that means little", 2, 2),
  stays("analysed", 207, 122),
];

const records: Readonly<Record<string, FlowRecord>> = {
  whole: record(whole),
  "nobody-leaves": record([stays("in the registry", 12, 8), stays("analysed", 12, 8)]),
  "nobody-stays": record([stays("in the registry", 12, 8), leaves("not tibia", 12, 8), stays("analysed", 0, 0)]),
  "one-patient": record([stays("in the registry", 2, 1), leaves("no gain", 1, 1), stays("analysed", 1, 1)]),
  nothing: record([]),
};

figureCases(flowFigure, records, {
  unpictured: { "5 000 segments": record([stays("in the registry", 5000, 3120), leaves("no gain", 1, 1), stays("analysed", 4999, 3120)]) },
});

test("the stem is as wide as the segments that are left", () => {
  const stem = flowFigure
    .layout(record(whole))
    .marks.flatMap((mark) => (mark.mark === "band" && mark.opacity === undefined ? [mark.width] : []));
  const of = (segments: number) => (segments / 480) * (stem[0] ?? 0);
  const left = [480, 290, 226, 226, 220, 209, 207, 207];
  for (const [index, width] of stem.entries()) expect(width).toBeCloseTo(of(left[index] ?? -1), 9);
  expect(stem).toHaveLength(left.length);
  const leaving = flowFigure
    .layout(record(whole))
    .marks.flatMap((mark) => (mark.mark === "band" && mark.opacity !== undefined ? [mark.width] : []));
  for (const [index, segments] of [190, 64, 6, 11, 2].entries()) expect(leaving[index]).toBeCloseTo(of(segments), 9);
});

test("steps that don't add up are refused", () => {
  expect(() => flowFigure.layout(record([stays("in the registry", 10, 8), leaves("no gain", 3, 2), stays("analysed", 8, 6)]))).toThrow(
    new RangeError("walked requires 7 segments to stay after those that left, received 8"),
  );
  expect(() => flowFigure.layout(record([leaves("no gain", 3, 2)]))).toThrow(RangeError);
});

test("every step says how many and why", () => {
  const texts = textsIn(flowFigure.layout(record(whole)));
  for (const text of [
    "480 segments in 262 patients",
    "Healing date missing",
    "11 segments in 9 patients",
    "207 segments in 122 patients",
    "analysed",
  ])
    expect(texts).toContain(text);
});
