import {
  boneLengthMm,
  type LengthReading,
  measuredStatureGainMm,
  type NumberReading,
  type PersonCase,
  type ProportionId,
  type ProportionReading,
  proportionAt,
  proportionIds,
  statureGainMm,
} from "@/lib/outcomes";
import { type Held, heldOf } from "./days";
import type { CaseRows } from "./rows-of-case";

export type BodyMeasureAt = {
  readonly measure: number;
  readonly occasion: string | null;
  /** Days from the first operation. */
  readonly day: number | null;
  /** From which day of the row it was taken where it had no date of its own. */
  readonly dayFrom: string | null;
  readonly recorded: readonly Held[];
};
export type BoneAt = {
  readonly bone: "femur" | "tibia";
  readonly side: "left" | "right";
  readonly before: LengthReading | null;
  readonly after: LengthReading | null;
};
export type ProportionBeside = { readonly id: ProportionId; readonly before: ProportionReading; readonly after: ProportionReading };

/** A person's measures before and after, each reading saying whether it was measured or derived from the segments. */
export type CaseBody = {
  readonly measures: readonly BodyMeasureAt[];
  readonly bones: readonly BoneAt[];
  readonly proportions: readonly ProportionBeside[];
  /** Mean of the two sides, femur and tibia added; never the sum of the sides. */
  readonly statureGainMm: NumberReading;
  /** Standing height after less before. */
  readonly measuredStatureGainMm: NumberReading;
};

const told: ReadonlySet<string> = new Set(["bodyDay", "occasion", "bodyDayFrom"]);

export function caseBodyOf(rows: CaseRows, person: PersonCase, zero: number | null): CaseBody {
  return {
    measures: rows.bodyMeasures.map(({ entity, row }) => ({
      measure: entity,
      occasion: row.occasion,
      day: zero === null ? null : row.bodyDay - zero,
      dayFrom: row.bodyDayFrom,
      recorded: heldOf("bodyMeasure", row, zero, () => null).filter(({ field }) => !told.has(field)),
    })),
    bones: bonesOf(person),
    proportions: proportionIds
      .map((id) => ({ id, before: proportionAt(person, id, "before"), after: proportionAt(person, id, "after") }))
      .filter(({ before, after }) => before.measured || after.measured),
    statureGainMm: statureGainMm(person),
    measuredStatureGainMm: measuredStatureGainMm(person),
  };
}

function bonesOf(person: PersonCase): readonly BoneAt[] {
  const bones = (["femur", "tibia"] as const).flatMap((bone) => (["left", "right"] as const).map((side) => ({ bone, side })));
  return bones
    .map(({ bone, side }) => ({
      bone,
      side,
      before: boneLengthMm(person, bone, side, "before"),
      after: boneLengthMm(person, bone, side, "after"),
    }))
    .filter(({ before, after }) => before !== null || after !== null);
}
