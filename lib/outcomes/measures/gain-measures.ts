import type { SegmentCase } from "../case";
import {
  gainAccuracyPercent,
  gainErrorMm,
  gainErrorPercent,
  gainLostMm,
  gainMm,
  gainPercentOfBone,
  gainWithin,
  type NumberReading,
  notMeasured,
  type Tolerance,
} from "../gain/gain";
import { healingStatus } from "../healing/status";
import type { MeasureOptions, SegmentMeasure } from "./definition";

/** A length gained so far is not the final one, so a bone still being lengthened has no gain yet. */
const final =
  (read: (segment: SegmentCase, options: MeasureOptions) => NumberReading) =>
  (segment: SegmentCase, options: MeasureOptions): NumberReading => {
    if (segment.procedure === "transport") return notMeasured("not-lengthening");
    return healingStatus(segment) === "still-distracting" ? notMeasured("still-distracting") : read(segment, options);
  };

const number = (id: string, title: string, unit: string, sentence: string, read: SegmentMeasure["read"]): SegmentMeasure => ({
  id,
  title,
  of: "segment",
  unit,
  kind: "number",
  sentence,
  read: final(read),
});

const within = (id: string, title: string, sentence: string, tolerance: (options: MeasureOptions) => Tolerance): SegmentMeasure => ({
  id,
  title,
  of: "segment",
  unit: "share",
  kind: "share",
  sentence,
  read: final((segment, options) => gainWithin(segment, tolerance(options), options.plan)),
});

export const gainMeasures: readonly SegmentMeasure[] = [
  number("gain", "Gain", "mm", "length gained at the osteotomy, on film at the end of distraction", (segment) => gainMm(segment)),
  number("gain-error", "Gain less plan", "mm", "gain less the plan at start; early stops are never left out", (segment, { plan }) =>
    gainErrorMm(segment, plan),
  ),
  number(
    "gain-error-relative",
    "Gain less plan, of the plan",
    "%",
    "gain less the plan at start, as a percent of the plan",
    (segment, { plan }) => gainErrorPercent(segment, plan),
  ),
  number("gain-accuracy", "Accuracy of gain", "%", "100 × (1 − |gain − plan| / plan)", (segment, { plan }) =>
    gainAccuracyPercent(segment, plan),
  ),
  number("gain-percent", "Gain of bone length", "% of bone", "gain as a percent of the bone’s length before", (segment) =>
    gainPercentOfBone(segment),
  ),
  number("gain-lost", "Gain lost", "mm", "gain at the end of distraction less gain at last follow-up", (segment) => gainLostMm(segment)),
  within("gain-within-5mm", "Gain within 5 mm of plan", "gain within 5 mm of the plan at start", () => ({ within: "mm", limit: 5 })),
  within("gain-within-10mm", "Gain within 10 mm of plan", "gain within 10 mm of the plan at start", () => ({ within: "mm", limit: 10 })),
  within("gain-within-10percent", "Gain within 10 % of plan", "gain within 10 % of the plan at start", () => ({
    within: "percent",
    limit: 10,
  })),
  within(
    "gain-goal-reached",
    "Goal reached",
    "gain no more than the unit’s tolerance short of the plan at start (5 mm unless changed)",
    ({ toleranceMm }) => ({
      within: "reached",
      limit: toleranceMm,
    }),
  ),
];
