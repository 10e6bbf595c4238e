import { type Day, dayOf, onWeekday } from "./calendar";
import type { Chance } from "./chance";
import type { Body, Bone, Case, Group, Pattern, Side } from "./types";

export type PlannedSegment = { readonly bone: Bone; readonly side: Side; readonly plannedGainMm: number };
export type PlannedOperation = { readonly day: Day; readonly stage: number; readonly segments: readonly PlannedSegment[] };

const lastSurgery = dayOf(2024, 12, 30);
const other = (side: Side): Side => (side === "left" ? "right" : "left");

/** The operations of a person: which bones, when, and by how much each is to be lengthened. */
export function operationsOf(chance: Chance, { group, pattern, firstSurgery }: Case, body: Body): readonly PlannedOperation[] {
  const side: Side = chance.pick(["left", "right"]);
  const stages = stagesOf(chance, pattern, group).map((bones) =>
    bones.map(({ bone, both }) => {
      const plannedGainMm = plannedGainOf(chance, { group, pattern, bone, body });
      return both
        ? [
            { bone, side: "left" as const, plannedGainMm },
            { bone, side: "right" as const, plannedGainMm },
          ]
        : [{ bone, side, plannedGainMm }];
    }),
  );
  const gapDays = stages.length === 1 ? 0 : gapOf(chance, pattern);
  const first = firstSurgery + gapDays > lastSurgery ? lastSurgery - gapDays - chance.whole(10, 300) : firstSurgery;
  return stages.flatMap((bones, index) => {
    const segments = bones.flat();
    const day = onWeekday(first + index * gapDays);
    return sidesApart(chance, { day, stage: index + 1, segments }, pattern, side);
  });
}

type BoneOfStage = { readonly bone: Bone; readonly both: boolean };
const femora: BoneOfStage = { bone: "femur", both: true };
const tibiae: BoneOfStage = { bone: "tibia", both: true };
const one = (bone: Bone): BoneOfStage => ({ bone, both: false });

function stagesOf(chance: Chance, pattern: Pattern, group: Group): readonly (readonly BoneOfStage[])[] {
  const either = chance.happens(group === "deformity" ? 0.45 : 0.62) ? one("femur") : one("tibia");
  const stages: Readonly<Record<Pattern, readonly (readonly BoneOfStage[])[]>> = {
    "both-femora": [[femora]],
    "both-tibiae": [[tibiae]],
    "both-humeri": [[{ bone: "humerus", both: true }]],
    "femora-then-tibiae": [[femora], [tibiae]],
    "tibiae-then-femora": [[tibiae], [femora]],
    "one-bone": [[either]],
    "femur-and-tibia": [[one("femur"), one("tibia")]],
    "same-bone-again": [[either], [either]],
    "femur-and-tibia-then-femur": [[one("femur"), one("tibia")], [one("femur")]],
    "one-forearm": [[one("forearm")]],
    "one-foot-ray": [[one("foot-ray")]],
    "one-hand-ray": [[one("hand-ray")]],
    transport: [[chance.happens(0.75) ? one("tibia") : one("femur")]],
  };
  return stages[pattern];
}

function gapOf(chance: Chance, pattern: Pattern): number {
  return pattern === "femora-then-tibiae" || pattern === "tibiae-then-femora" ? chance.whole(190, 410) : chance.whole(760, 1180);
}

/** One in seven persons has the two sides in two anaesthetics, a few days or some weeks apart. */
function sidesApart(chance: Chance, operation: PlannedOperation, pattern: Pattern, first: Side): readonly PlannedOperation[] {
  const apart = chance.happens(0.14) ? chance.pick([3, 4, 5, 7, 35, 42, 56]) : 0;
  const bilateral = pattern.startsWith("both-") || pattern.endsWith("tibiae") || pattern.endsWith("femora");
  if (!bilateral || apart === 0 || operation.day + apart + 2 > lastSurgery) return [operation];
  const of = (side: Side) => operation.segments.filter((segment) => segment.side === side);
  return [
    { ...operation, segments: of(first) },
    { ...operation, day: onWeekday(operation.day + apart), segments: of(other(first)) },
  ];
}

type Target = { readonly group: Group; readonly pattern: Pattern; readonly bone: Bone; readonly body: Body };

const smallBones: Readonly<Partial<Record<Bone, readonly [number, number]>>> = {
  "foot-ray": [12, 17],
  "hand-ray": [11, 13],
  forearm: [20, 34],
};

/** Planned gain in mm. Stature: one bone 40-80, femur and tibia together at most 100 (common practice, no source); the rest invented. */
function plannedGainOf(chance: Chance, target: Target): number {
  const { group, pattern, bone, body } = target;
  const small = smallBones[bone];
  if (small) return chance.whole(...small);
  if (bone === "humerus") return Math.min(Math.floor(body.humerusMm * 0.26), chance.pick([40, 45, 50]));
  const staged = pattern === "femora-then-tibiae" || pattern === "tibiae-then-femora";
  if (group === "stature") return chance.pick(statureGainsMm[bone === "femur" ? "femur" : "tibia"][staged ? "staged" : "alone"]);
  if (group === "dysplasia") return Math.min(shareOfBone(target, 0.25), chance.pick(staged ? [45, 50] : [45, 50, 55, 60]));
  return Math.min(shareOfBone(target, 0.2), chance.whole(...differenceMm(group, pattern)));
}

const statureGainsMm = {
  femur: { alone: [50, 55, 60, 60, 65, 70, 75, 80], staged: [50, 50, 55, 60] },
  tibia: { alone: [40, 45, 50, 50, 55, 60], staged: [35, 40, 40] },
} as const;

function differenceMm(group: Group, pattern: Pattern): readonly [low: number, high: number] {
  if (group === "loss") return [45, 85];
  if (group === "deformity") return [15, 42];
  return [21, pattern === "one-bone" ? 62 : 45];
}

function shareOfBone({ bone, body }: Target, share: number): number {
  const { left, right } = bone === "femur" ? body.femurMm : body.tibiaMm;
  return Math.floor(Math.min(left, right) * share);
}
