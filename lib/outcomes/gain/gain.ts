import type { Reason, SegmentRow } from "@/lib/codebook";

export type GainCase = Pick<
  SegmentRow,
  "procedure" | "gainMm" | "gainFinalMm" | "plannedGainMm" | "plannedGainFinalMm" | "boneLengthBeforeMm"
>;

/** A number that a measure reads on one segment or person, or why there is none. */
export type NumberReading = { readonly measured: true; readonly value: number } | { readonly measured: false; readonly because: Reason };

export const measuredAs = (value: number): NumberReading => ({ measured: true, value });
export const notMeasured = (because: Reason): NumberReading => ({ measured: false, because });

/** Which plan the gain is held against: the one at the start, unless the final one is asked for beside it. */
export type Plan = "plannedGainMm" | "plannedGainFinalMm";

/** Gain at the end of distraction, mm. Nothing gained is a gain of zero and counts fully. */
export function gainMm(segment: GainCase): NumberReading {
  if (segment.procedure === "transport") return notMeasured("not-lengthening");
  return segment.gainMm === null ? notMeasured("no-gain") : measuredAs(segment.gainMm);
}

/** Gained less planned, mm: positive is more than planned. */
export function gainErrorMm(segment: GainCase, plan: Plan = "plannedGainMm"): NumberReading {
  const gain = gainMm(segment);
  if (!gain.measured) return gain;
  const planned = segment[plan];
  return planned === null || planned <= 0 ? notMeasured("no-target") : measuredAs(gain.value - planned);
}

/** Error as a percent of the plan. */
export function gainErrorPercent(segment: GainCase, plan: Plan = "plannedGainMm"): NumberReading {
  const error = gainErrorMm(segment, plan);
  return error.measured ? measuredAs((error.value * 100) / (segment[plan] as number)) : error;
}

/** 100 × (1 − |error| / planned). Papers print an "accuracy" whose formula could not be read: no comparison with them. */
export function gainAccuracyPercent(segment: GainCase, plan: Plan = "plannedGainMm"): NumberReading {
  const error = gainErrorPercent(segment, plan);
  return error.measured ? measuredAs(100 - Math.abs(error.value)) : error;
}

/** Gain as a percent of the bone's length before. */
export function gainPercentOfBone(segment: GainCase): NumberReading {
  const gain = gainMm(segment);
  if (!gain.measured) return gain;
  const length = segment.boneLengthBeforeMm;
  return length === null ? notMeasured("no-bone-length") : measuredAs((gain.value * 100) / length);
}

/** Gain at the end of distraction less gain at last follow-up, mm. */
export function gainLostMm(segment: GainCase): NumberReading {
  const gain = gainMm(segment);
  if (!gain.measured) return gain;
  return segment.gainFinalMm === null ? notMeasured("not-recorded") : measuredAs(gain.value - segment.gainFinalMm);
}

/** Tolerances on the error (a choice of the trade; the unit's own is an argument). */
export type Tolerance =
  | { readonly within: "mm"; readonly limit: number }
  | { readonly within: "percent"; readonly limit: number }
  | { readonly within: "reached"; readonly limit: number };

/** 1 when the error lies within the tolerance, 0 when not. `reached`: the error is at least −limit mm, more than planned counts. */
export function gainWithin(segment: GainCase, tolerance: Tolerance, plan: Plan = "plannedGainMm"): NumberReading {
  const error = tolerance.within === "percent" ? gainErrorPercent(segment, plan) : gainErrorMm(segment, plan);
  if (!error.measured) return error;
  const met = tolerance.within === "reached" ? error.value >= -tolerance.limit : Math.abs(error.value) <= tolerance.limit;
  return measuredAs(Number(met));
}
