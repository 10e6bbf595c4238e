import { measuredAs, type NumberReading, notMeasured } from "../gain/gain";
import { proportionNorms } from "../norms/proportion-norms";
import { boneLengthMm } from "../proportion/bone-lengths";
import { legsOf } from "../proportion/legs";
import { bodyMeasureAt, type Moment, type PersonCase } from "../proportion/person-case";
import { isLengthenedOnBothSides, type ProportionId, predictedRatio, proportionAt, proportionIds } from "../proportion/proportion";
import { statureGainMm, statureGrowth } from "../proportion/stature";
import type { MeasureOptions, PersonMeasure } from "./definition";

const proportionTitles: Readonly<Record<ProportionId, readonly [title: string, unit: string, sentence: string]>> = {
  "proportion-tibia-femur": ["Tibia to femur", "ratio", "tibia over femur, mean of the sides"],
  "proportion-sitting-height": ["Sitting height to stature", "ratio", "sitting height over stature"],
  "proportion-leg": ["Relative leg length", "ratio", "(stature − sitting height) over stature"],
  "proportion-span": ["Arm span to stature", "ratio", "arm span over stature"],
  "proportion-left-right": ["Left to right", "mm", "largest difference between the two sides of a bone"],
};

function change(person: PersonCase, id: ProportionId): NumberReading {
  const before = proportionAt(person, id, "before");
  const after = proportionAt(person, id, "after");
  if (!after.measured) return notMeasured(after.because);
  return before.measured ? measuredAs(after.value - before.value) : notMeasured(before.because);
}

function at(person: PersonCase, id: ProportionId, moment: Moment): NumberReading {
  const reading = proportionAt(person, id, moment);
  return reading.measured ? measuredAs(reading.value) : notMeasured(reading.because);
}

/** The ratio that the gains alone predict, trunk and arms unchanged. */
function predicted(person: PersonCase, id: ProportionId): NumberReading {
  if (!isLengthenedOnBothSides(person)) return notMeasured("one-side-only");
  if (id === "proportion-left-right") return notMeasured("no-reference");
  if (legsOf(person).some((segment) => segment.gainMm === null)) return notMeasured("no-gain");
  // an arm that was lengthened too moves the span by itself
  if (id === "proportion-span" && person.segments.some(({ bone }) => bone === "humerus" || bone === "forearm"))
    return notMeasured("bone-apart");
  const body = bodyMeasureAt(person, "before", (one) => one.statureMm !== null);
  const legs = sides.map((side) => [boneLengthMm(person, "femur", side, "before"), boneLengthMm(person, "tibia", side, "before")] as const);
  const gains = sides.map((side) => ({ femurMm: gainOf(person, "femur", side), tibiaMm: gainOf(person, "tibia", side) }));
  if (id === "proportion-tibia-femur" && legs.some(([femur, tibia]) => !femur || !tibia)) return notMeasured("no-bone-length");
  const trunk = { statureMm: body?.statureMm ?? null, sittingHeightMm: body?.sittingHeightMm ?? null, armSpanMm: body?.armSpanMm ?? null };
  const needed = id === "proportion-span" ? trunk.armSpanMm : trunk.sittingHeightMm;
  if (id !== "proportion-tibia-femur" && (trunk.statureMm === null || needed === null)) return notMeasured("not-recorded");
  const ratios = gains.map((gain, i) => {
    const [femur, tibia] = legs[i] ?? [null, null];
    const before = {
      femurMm: femur?.lengthMm ?? 0,
      tibiaMm: tibia?.lengthMm ?? 0,
      statureMm: trunk.statureMm ?? 0,
      sittingHeightMm: trunk.sittingHeightMm ?? 0,
      armSpanMm: trunk.armSpanMm ?? 0,
    };
    return predictedRatio(id, before, gain);
  });
  return measuredAs(ratios.reduce((sum, ratio) => sum + ratio, 0) / ratios.length);
}

const sides = ["left", "right"] as const;

function gainOf(person: PersonCase, bone: "femur" | "tibia", side: (typeof sides)[number]): number {
  return legsOf(person)
    .filter((one) => one.bone === bone && one.side === side)
    .reduce((sum, one) => sum + (one.gainMm ?? 0), 0);
}

const dysplasias: ReadonlySet<string | null> = new Set(["achondroplasia", "hypochondroplasia", "other-dysplasia"]);

/** Distance from the norm that was chosen for the person, in its deviations; only where the norm fits sex and way of measuring. */
function z(person: PersonCase, id: ProportionId): NumberReading {
  const norm = proportionNorms.find(
    (one) => one.id === person.proportionReference && one.of === id && (one.sex === "both" || one.sex === person.sex),
  );
  if (!norm || norm.sd === null || dysplasias.has(person.aetiology) || (person.ageAtSurgeryYears ?? 0) < 18)
    return notMeasured("no-reference");
  const after = proportionAt(person, id, "after");
  return after.measured ? measuredAs((after.value - norm.mean) / norm.sd) : notMeasured(after.because);
}

const readings: readonly (readonly [moment: string, words: string, read: (person: PersonCase, id: ProportionId) => NumberReading])[] = [
  ["before", "before surgery", (person, id) => at(person, id, "before")],
  ["after", "after treatment", (person, id) => at(person, id, "after")],
  ["change", "after less before", change],
  ["predicted", "as the gains alone predict it", predicted],
  ["z", "after, in deviations of the norm chosen for the person", z],
];

const proportions: readonly PersonMeasure[] = proportionIds.flatMap((id) =>
  readings.map(([moment, words, read]) => {
    const [title, unit, sentence] = proportionTitles[id];
    return {
      id: `${id}.${moment}`,
      title: `${title}, ${moment === "z" ? "z" : moment}`,
      of: "person" as const,
      unit: moment === "z" ? "z" : unit,
      kind: "number" as const,
      sentence: `${sentence}, ${words}`,
      read: (person: PersonCase) => read(person, id),
    };
  }),
);

const growth: readonly PersonMeasure[] = (["z", "centile"] as const).flatMap((scale) =>
  (["before", "after"] as const).map((moment) => ({
    id: `stature-${scale}.${moment}`,
    title: `Stature ${scale}, ${moment}`,
    of: "person" as const,
    unit: scale,
    kind: "number" as const,
    sentence: `${scale} of stature ${moment} surgery against a growth table; adults against its last age`,
    read: (person: PersonCase, { growthTable }: MeasureOptions): NumberReading => {
      const score = statureGrowth(person, moment, growthTable);
      return score ? measuredAs(score[scale]) : notMeasured("not-recorded");
    },
  })),
);

function scoreChange(person: PersonCase, { scoreCode }: MeasureOptions): NumberReading {
  const first = Math.min(...person.segments.map((segment) => segment.surgeryDay));
  const own = person.scores.filter((one) => one.scoreCode === scoreCode).sort((a, b) => a.scoreDay - b.scoreDay);
  const before = own.filter((one) => one.scoreDay <= first).at(-1);
  const after = own.filter((one) => one.scoreDay > first).at(-1);
  return before && after ? measuredAs(after.scoreValue - before.scoreValue) : notMeasured("not-recorded");
}

/** 1 when the score got better by at least the difference that matters; without such a difference nothing can be said. */
function scoreResponded(person: PersonCase, options: MeasureOptions): NumberReading {
  const { scoreBetter, scoreMinimalDifference } = options;
  if (scoreBetter === null || scoreMinimalDifference === null) return notMeasured("no-reference");
  const change = scoreChange(person, options);
  if (!change.measured) return change;
  const better = scoreBetter === "higher" ? change.value : -change.value;
  return measuredAs(Number(better >= scoreMinimalDifference));
}

function statureGainError(person: PersonCase): NumberReading {
  const gain = statureGainMm(person);
  if (!gain.measured) return gain;
  if (legsOf(person).some((segment) => segment.plannedGainMm === null)) return notMeasured("no-target");
  const planned = statureGainMm({ ...person, segments: person.segments.map((segment) => ({ ...segment, gainMm: segment.plannedGainMm })) });
  return planned.measured ? measuredAs(gain.value - planned.value) : planned;
}

/** Limb-length difference left over the one aimed for; a blank aim counts as none. */
function residualDifference(person: PersonCase): NumberReading {
  const last = [...person.segments].sort((a, b) => b.surgeryDay - a.surgeryDay).find((segment) => segment.differenceFinalMm !== null);
  return last ? measuredAs((last.differenceFinalMm as number) - (last.differenceTargetMm ?? 0)) : notMeasured("not-recorded");
}

export const personMeasures: readonly PersonMeasure[] = [
  {
    id: "residual-difference",
    title: "Residual difference",
    of: "person",
    unit: "mm",
    kind: "number",
    sentence: "limb-length difference at last follow-up less the difference aimed for (0 where none is recorded)",
    read: residualDifference,
  },
  ...proportions,
  ...growth,
  {
    id: "stature-gain",
    title: "Stature gain",
    of: "person",
    unit: "mm",
    kind: "number",
    sentence: "mean of left and right, femur and tibia added, of persons whose legs were lengthened on both sides",
    read: (person) => statureGainMm(person),
  },
  {
    id: "stature-gain-error",
    title: "Stature gain less plan",
    of: "person",
    unit: "mm",
    kind: "number",
    sentence: "stature gain less the plan at start, mean of left and right, femur and tibia added",
    read: statureGainError,
  },
  {
    id: "score-change",
    title: "Change of score",
    of: "person",
    unit: "points",
    kind: "number",
    sentence: "last score after surgery less the last before it",
    read: scoreChange,
  },
  {
    id: "score-responders",
    title: "Score improved by what matters",
    of: "person",
    unit: "share",
    kind: "share",
    sentence: "score better by at least its minimal important difference, of persons with a score before and after",
    read: scoreResponded,
  },
];
