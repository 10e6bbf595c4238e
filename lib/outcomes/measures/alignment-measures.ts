import type { SegmentCase } from "../case";
import { gainMm, measuredAs, type NumberReading, notMeasured } from "../gain/gain";
import type { SegmentMeasure } from "./definition";

/** Cuts of the trade's own choosing (a choice, no source). */
const outside = { axisMm: 10, angulationDeg: 5, rotationDeg: 10 } as const;

function axisChange({ axisDeviationBeforeMm: before, axisDeviationFinalMm: final }: SegmentCase): NumberReading {
  return before === null || final === null ? notMeasured("not-recorded") : measuredAs(final - before);
}

function axisChangePerCm(segment: SegmentCase): NumberReading {
  const change = axisChange(segment);
  if (!change.measured) return change;
  const gain = gainMm(segment);
  if (!gain.measured) return gain;
  return gain.value <= 0 ? notMeasured("gain-not-positive") : measuredAs((change.value * 10) / gain.value);
}

function beyond(value: number | null, limit: number): NumberReading {
  return value === null ? notMeasured("not-recorded") : measuredAs(Number(Math.abs(value) > limit));
}

const measure = (
  id: string,
  title: string,
  unit: string,
  kind: SegmentMeasure["kind"],
  sentence: string,
  read: (segment: SegmentCase) => NumberReading,
): SegmentMeasure => ({ id, title, of: "segment", unit, kind, sentence, read });

export const alignmentMeasures: readonly SegmentMeasure[] = [
  measure(
    "alignment-axis-change",
    "Change of mechanical axis",
    "mm",
    "number",
    "mechanical axis deviation at last follow-up less before (medial positive)",
    axisChange,
  ),
  measure(
    "alignment-axis-per-cm",
    "Change of mechanical axis per cm",
    "mm/cm",
    "number",
    "change of mechanical axis deviation per cm gained",
    axisChangePerCm,
  ),
  measure(
    "alignment-axis-outside",
    "Axis more than 10 mm outside",
    "share",
    "share",
    "mechanical axis more than 10 mm from the middle at last follow-up",
    (segment) => beyond(segment.axisDeviationFinalMm, outside.axisMm),
  ),
  measure(
    "alignment-angulation-outside",
    "Angulation above 5°",
    "share",
    "share",
    "sagittal angulation above 5 degrees at last follow-up",
    (segment) => beyond(segment.sagittalAngulationFinalDeg, outside.angulationDeg),
  ),
  measure(
    "alignment-rotation-outside",
    "Rotation difference above 10°",
    "share",
    "share",
    "rotation difference above 10 degrees at last follow-up",
    (segment) => beyond(segment.rotationDifferenceFinalDeg, outside.rotationDeg),
  ),
];
