import { alignmentMeasures, courseMeasures, gainMeasures, type PersonMeasure, personMeasures, type SegmentMeasure } from "@/lib/outcomes";
import { ofScore, scoreOf } from "./scores";

/** Measures that read one number or one yes-or-no of a segment or a person. */
export const readMeasures: readonly (SegmentMeasure | PersonMeasure)[] = [
  ...gainMeasures,
  ...courseMeasures,
  ...alignmentMeasures,
  ...personMeasures,
];

/** A bare id answers with this moment. */
const usualMoment: Readonly<Record<string, string>> = { proportion: "change", stature: "after", motion: "lost" };

/** The measure of an id, of a score that it names, or of a bare id with its usual moment; undefined when there is none. */
export function readMeasure(id: string): SegmentMeasure | PersonMeasure | undefined {
  const exact = readMeasures.find((measure) => measure.id === id);
  if (exact) return exact;
  const score = scoreOf(id);
  if (score !== null) {
    const ofScores = readMeasures.find((measure) => id === `${measure.id}.${score}`);
    return ofScores && ofScore(ofScores, score);
  }
  const moment = usualMoment[id.split("-")[0] ?? ""];
  return readMeasures.find((measure) => measure.id === `${id}.${moment}`);
}

/** The bare ids, each once, with the measure that answers for it. */
export function bareMeasures(): readonly (readonly [id: string, measure: SegmentMeasure | PersonMeasure])[] {
  const bare = new Set(readMeasures.map(({ id }) => id.split(".")[0] as string));
  return [...bare].flatMap((id) => {
    const measure = readMeasure(id);
    return measure ? [[id, measure] as const] : [];
  });
}
