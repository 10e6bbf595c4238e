import type { Reason } from "@/lib/codebook";
import { boneLengthMm } from "./bone-lengths";
import { legsOf } from "./legs";
import { bodyMeasureAt, type Moment, type PersonCase } from "./person-case";

export const proportionIds = [
  "proportion-tibia-femur",
  "proportion-sitting-height",
  "proportion-leg",
  "proportion-span",
  "proportion-left-right",
] as const;
export type ProportionId = (typeof proportionIds)[number];

export type ProportionReading =
  | { readonly measured: true; readonly value: number; readonly source: "measured" | "derived" }
  | { readonly measured: false; readonly because: Reason };

const no = (because: Reason): ProportionReading => ({ measured: false, because });

/**
 * A proportion of a person at a moment. Ratios but for left–right, which is the largest difference between the two sides of a bone, mm.
 * Tibia to femur, sitting height and span are outcomes of persons whose legs were lengthened on both sides; a discrepancy gets left–right only.
 */
export function proportionAt(person: PersonCase, id: ProportionId, moment: Moment): ProportionReading {
  if (id !== "proportion-left-right" && !isLengthenedOnBothSides(person)) return no("one-side-only");
  if (id === "proportion-tibia-femur") return tibiaToFemur(person, moment);
  if (id === "proportion-left-right") return leftRight(person, moment);
  const numerator = id === "proportion-span" ? ("armSpanMm" as const) : ("sittingHeightMm" as const);
  const body = bodyMeasureAt(person, moment, (one) => one.statureMm !== null && one[numerator] !== null);
  if (!body) return no("not-recorded");
  const stature = body.statureMm as number;
  const ratio = (body[numerator] as number) / stature;
  return { measured: true, value: id === "proportion-leg" ? 1 - ratio : ratio, source: "measured" };
}

/** Whether both legs were lengthened: arms and rays make nobody taller. */
export function isLengthenedOnBothSides(person: PersonCase): boolean {
  return new Set(legsOf(person).map(({ side }) => side)).size === 2;
}

function tibiaToFemur(person: PersonCase, moment: Moment): ProportionReading {
  const ratios = (["left", "right"] as const).flatMap((side) => {
    const tibia = boneLengthMm(person, "tibia", side, moment);
    const femur = boneLengthMm(person, "femur", side, moment);
    return tibia && femur
      ? [{ value: tibia.lengthMm / femur.lengthMm, derived: tibia.source === "derived" || femur.source === "derived" }]
      : [];
  });
  return meanOfSides(ratios);
}

function leftRight(person: PersonCase, moment: Moment): ProportionReading {
  const bones = (["femur", "tibia"] as const).filter((bone) => person.segments.some((segment) => segment.bone === bone));
  const differences = bones.flatMap((bone) => {
    const left = boneLengthMm(person, bone, "left", moment);
    const right = boneLengthMm(person, bone, "right", moment);
    return left && right
      ? [{ value: Math.abs(left.lengthMm - right.lengthMm), derived: left.source === "derived" || right.source === "derived" }]
      : [];
  });
  if (differences.length === 0) return no("no-bone-length");
  const value = Math.max(...differences.map((one) => one.value));
  return { measured: true, value, source: differences.some((one) => one.derived) ? "derived" : "measured" };
}

function meanOfSides(sides: readonly { value: number; derived: boolean }[]): ProportionReading {
  if (sides.length === 0) return no("no-bone-length");
  const value = sides.reduce((sum, one) => sum + one.value, 0) / sides.length;
  return { measured: true, value, source: sides.some((one) => one.derived) ? "derived" : "measured" };
}

/** What lengthening alone predicts of a ratio, trunk and arms unchanged: gains in mm of one leg. */
export function predictedRatio(
  id: Exclude<ProportionId, "proportion-left-right">,
  before: {
    readonly femurMm: number;
    readonly tibiaMm: number;
    readonly statureMm: number;
    readonly sittingHeightMm: number;
    readonly armSpanMm: number;
  },
  gain: { readonly femurMm: number; readonly tibiaMm: number },
): number {
  const stature = before.statureMm + gain.femurMm + gain.tibiaMm;
  switch (id) {
    case "proportion-tibia-femur":
      return (before.tibiaMm + gain.tibiaMm) / (before.femurMm + gain.femurMm);
    case "proportion-sitting-height":
      return before.sittingHeightMm / stature;
    case "proportion-leg":
      return 1 - before.sittingHeightMm / stature;
    case "proportion-span":
      return before.armSpanMm / stature;
  }
}
