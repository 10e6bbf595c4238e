import type { Chance } from "./chance";
import type { Body, Measured, Segment } from "./types";

export type Operated = {
  readonly number: number;
  readonly surgery: number;
  readonly lastSeen: number;
  readonly segments: readonly Segment[];
  readonly age: number;
};

/** Body measures before the first operation of each stage, and at the last visit of the last one. */
export function measuresOf(chance: Chance, body: Body, stages: readonly Operated[]): readonly Measured[] {
  const first = stages[0];
  const last = stages.at(-1);
  if (!first || !last) return [];
  const measured: Measured[] = [{ ...asMeasured(chance, body), bodyDay: first.surgery, occasion: "before", operation: first.number }];
  let now = body;
  stages.forEach((stage, index) => {
    const next = stages[index + 1];
    const years = ((next?.surgery ?? stage.lastSeen) - stage.surgery) / 365.25;
    measured.push(...atEndOfDistraction(chance, now, stage));
    now = after(chance, now, stage, years);
    if (next && next.surgery > stage.surgery + 120)
      measured.push({ ...asMeasured(chance, now), bodyDay: next.surgery, occasion: "before", operation: next.number });
  });
  const complete = last.segments.every(({ fields }) => fields.consolidationDay || fields.fullWeightBearingDay);
  if (complete && last.lastSeen > last.surgery + 150 && chance.happens(0.86))
    measured.push({ ...asMeasured(chance, now), bodyDay: last.lastSeen, occasion: "final", operation: last.number });
  return measured;
}

/** Four in ten bilateral lengthenings are measured at the visit that ends distraction: stature alone. */
function atEndOfDistraction(chance: Chance, body: Body, stage: Operated): readonly Measured[] {
  const bilateral = bilateralGainMm(stage.segments);
  const end = Math.max(...stage.segments.map(({ fields }) => fields.distractionEndDay ?? Number.POSITIVE_INFINITY));
  const visit = stage.segments[0]?.visits.find(({ visitDay }) => visitDay >= end);
  if (bilateral === 0 || !visit || !chance.happens(0.4)) return [];
  const statureMm = Math.round(body.statureMm + bilateral - chance.whole(0, 6));
  return [{ statureMm, statureHow: "stadiometer", bodyDay: visit.visitDay, occasion: "end-of-distraction", operation: stage.number }];
}

function bilateralGainMm(segments: readonly Segment[]): number {
  const least = (bone: string) => Math.min(gainOf(segments, bone, "left"), gainOf(segments, bone, "right"));
  return least("femur") + least("tibia");
}

function asMeasured(chance: Chance, body: Body) {
  const partly = chance.happens(0.72);
  return {
    statureMm: body.statureMm,
    sittingHeightMm: partly ? body.sittingHeightMm : null,
    armSpanMm: partly ? body.armSpanMm : null,
    weightKg: body.weightKg,
    statureHow: chance.happens(0.85) ? ("stadiometer" as const) : ("wall" as const),
    femurLeftMm: body.femurMm.left,
    femurRightMm: body.femurMm.right,
    tibiaLeftMm: body.tibiaMm.left,
    tibiaRightMm: body.tibiaMm.right,
    lengthMethod: "standing-film" as const,
  };
}

const gainOf = (segments: readonly Segment[], bone: string, side: string) =>
  segments.filter(({ fields }) => fields.bone === bone && fields.side === side).reduce((sum, { fields }) => sum + (fields.gainMm ?? 0), 0);

/** A child grows about 50 mm a year, and its femur and tibia with it; an adult gains what was gained, give or take a time of day. */
function after(chance: Chance, body: Body, { segments, age }: Operated, years: number): Body {
  const growing = Math.max(0, Math.min(years, 16 - age));
  const gains = (bone: string) => ({ left: gainOf(segments, bone, "left"), right: gainOf(segments, bone, "right") });
  const [femur, tibia] = [gains("femur"), gains("tibia")];
  const bilateral = Math.min(femur.left, femur.right) + Math.min(tibia.left, tibia.right);
  const grown = (length: number, gain: number, perYear: number) => Math.round(length + gain + growing * perYear);
  return {
    statureMm: Math.round(body.statureMm + bilateral + growing * 45 + Math.max(-8, Math.min(8, 4 * chance.normal()))),
    sittingHeightMm: Math.round(body.sittingHeightMm + growing * 22 + Math.max(-5, Math.min(5, 3 * chance.normal()))),
    armSpanMm: Math.round(body.armSpanMm + growing * 46 + Math.max(-5, Math.min(5, 3 * chance.normal()))),
    weightKg: Math.round(body.weightKg + growing * 3 + Math.max(-3, Math.min(4, 2 * chance.normal()))),
    femurMm: { left: grown(body.femurMm.left, femur.left, 12), right: grown(body.femurMm.right, femur.right, 12) },
    tibiaMm: { left: grown(body.tibiaMm.left, tibia.left, 9), right: grown(body.tibiaMm.right, tibia.right, 9) },
    humerusMm: body.humerusMm,
  };
}
