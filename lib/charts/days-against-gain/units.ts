import { type ShownUnit, shownUnit } from "../say/shown-unit";

/** Time and gain in one look: days or months, the gain in cm as the trade reads it. */
export type TimeAndGain = { readonly time: ShownUnit; readonly gain: ShownUnit; readonly slope: ShownUnit };

export const timeUnits: readonly string[] = ["days", "months"];

/** @throws RangeError when the unit is no unit of time */
export function timeAndGain(asked = "days"): TimeAndGain {
  const time = shownUnit("days", asked);
  return { time, gain: shownUnit("mm", "cm"), slope: shownUnit("days/cm", asked === "months" ? "months/cm" : "days/cm") };
}
