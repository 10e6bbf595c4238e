import type { SegmentCase } from "../case";
import { followUpWindows } from "../follow-up/windows";
import { measuredAs, type NumberReading, notMeasured } from "../gain/gain";
import { type Joint, type MotionMoment, motionLossAt, motionOf } from "../motion/motion";
import type { SegmentMeasure } from "./definition";

/**
 * Slope of the distracted length over the days of distraction, mm a day, by least squares through at least three film visits.
 * Dial counts are not lengths; pauses and reversals stand in the visits themselves.
 */
function rateOfCourse(segment: SegmentCase): NumberReading {
  if (segment.procedure === "transport") return notMeasured("not-lengthening");
  const start = segment.distractionStartDay;
  if (start === null) return notMeasured("no-start");
  const end = segment.distractionEndDay ?? Number.POSITIVE_INFINITY;
  const points = segment.visits.filter(
    (one) => one.distractedMm !== null && one.distractedBy !== "dial" && one.visitDay >= start && one.visitDay <= end,
  );
  if (new Set(points.map((one) => one.visitDay)).size < 3) return notMeasured("no-visits");
  const meanDay = points.reduce((sum, one) => sum + one.visitDay, 0) / points.length;
  const above = points.reduce((sum, one) => sum + (one.visitDay - meanDay) * (one.distractedMm as number), 0);
  const below = points.reduce((sum, one) => sum + (one.visitDay - meanDay) ** 2, 0);
  return measuredAs(above / below);
}

const joints: readonly (readonly [id: string, title: string, joint: Joint])[] = [
  ["motion-knee-flexion", "Knee flexion", "kneeFlexionDeg"],
  ["motion-knee-extension", "Knee extension", "kneeExtensionDeg"],
  ["motion-ankle-dorsiflexion", "Ankle dorsiflexion", "ankleDorsiflexionDeg"],
  ["motion-hip-flexion", "Hip flexion", "hipFlexionDeg"],
];

const moments: Readonly<Record<MotionMoment, string>> = {
  lost: "before surgery less the worst after it",
  regained: "the last recorded less the worst after surgery",
  final: "the last recorded",
};

const motionMeasures: readonly SegmentMeasure[] = joints.flatMap(([id, title, joint]) =>
  (Object.keys(moments) as MotionMoment[]).map((moment) => ({
    id: `${id}.${moment}`,
    title: `${title}, ${moment}`,
    of: "segment" as const,
    unit: "deg",
    kind: "number" as const,
    sentence: `${title.toLowerCase()}: ${moments[moment]}`,
    read: (segment: SegmentCase): NumberReading => motionOf(segment.visits, segment.surgeryDay, joint, moment),
  })),
);

/** Loss at each window that is offered, by the visit nearest to its middle; none is carried forward. */
const motionAtWindows: readonly SegmentMeasure[] = joints.flatMap(([id, title, joint]) =>
  followUpWindows.map((window) => ({
    id: `${id}.lost-at-${window.id}`,
    title: `${title}, lost at ${window.label}`,
    of: "segment" as const,
    unit: "deg",
    kind: "number" as const,
    sentence: `${title.toLowerCase()}: before surgery less the visit nearest to ${window.label}, within ${window.around} days of it`,
    read: (segment: SegmentCase): NumberReading =>
      motionLossAt(segment.visits, segment.surgeryDay, joint, { from: window.middle - window.around, to: window.middle + window.around }),
  })),
);

export const courseMeasures: readonly SegmentMeasure[] = [
  {
    id: "distraction-rate-of-course",
    title: "Distraction rate of the course",
    of: "segment",
    unit: "mm/day",
    kind: "number",
    sentence: "slope of the length distracted, on film, over the visits during distraction",
    read: rateOfCourse,
  },
  ...motionMeasures,
  ...motionAtWindows,
];
