import { withArrangement } from "./arrangement";
import { bodyOf } from "./body";
import { type Day, yearsBetween } from "./calendar";
import { chanceOf } from "./chance";
import { surgeons } from "./identity";
import { measuresOf, type Operated } from "./measures";
import { type Patient, segmentsOf } from "./operation";
import { seed } from "./parameters";
import { ageOf, personFieldsOf, sexOf } from "./person-fields";
import { operationsOf, type PlannedOperation } from "./plan";
import { scoresOf } from "./scores";
import type { Body, Bone, Case, Identity, Person, PersonDraft, Segment, Side } from "./types";

/** Birth, of which the numbers and names of the person are made elsewhere. */
export function birthOf({ index, group, pattern, firstSurgery }: Case): Day {
  const chance = chanceOf(seed, "age", index);
  const repeated = pattern === "same-bone-again" || pattern === "femur-and-tibia-then-femur";
  const age = repeated ? chance.between(8, 13) : ageOf(chance, group);
  return Math.floor(firstSurgery - age * 365.25) - 1;
}

/** One invented person with every operation, event and measure. */
export function personOf(kind: Case, identity: Identity): Person {
  const chance = chanceOf(seed, "person", kind.index);
  const sex = sexOf(chance, kind.group);
  const age = yearsBetween(identity.dateOfBirth, kind.firstSurgery);
  const fields = personFieldsOf(chance, kind.group, sex, age);
  const natural = bodyOf(chance, kind.group, sex, age);
  const operations = operationsOf(chanceOf(seed, "plan", kind.index), kind, natural);
  const body = withDifference(natural, kind, operations);
  const patient: Patient = {
    case: kind,
    birth: identity.dateOfBirth,
    person: fields,
    personEffect: chance.skewed(),
    boneLengthMm: () => 0,
  };
  const segments: Segment[] = [];
  const surgeonsOfCase: string[] = [];
  const usual = chance.weighted(surgeons.map((surgeon, index) => [surgeon, [10, 7, 5, 3][index] ?? 1] as const));
  operations.forEach((operation, number) => {
    const gained = (bone: Bone, side: Side) =>
      segments.filter((s) => s.fields.bone === bone && s.fields.side === side).reduce((sum, s) => sum + (s.fields.gainMm ?? 0), 0);
    const boneLengthMm = (bone: Bone, side: Side) =>
      lengthOf(body, bone, side) + gained(bone, side) + grownMm(bone, age, operation.day - kind.firstSurgery);
    segments.push(...segmentsOf({ ...patient, boneLengthMm }, operation, number));
    surgeonsOfCase.push(chance.happens(0.9) ? usual : chance.pick(surgeons));
  });
  const differing = withArrangement(
    kind.index,
    segments.map((segment) => withResidual(segment, kind, body)),
  );
  const measures = measuresOf(chanceOf(seed, "measures", kind.index), body, stagesOf(operations, differing, identity.dateOfBirth));
  return {
    case: kind,
    identity,
    surgeons: surgeonsOfCase,
    fields: { ...fields, ...statusOf(kind, differing) },
    body,
    segments: differing,
    measures,
    scores: scoresOf(kind, differing),
  };
}

const small: Readonly<Partial<Record<Bone, number>>> = { forearm: 178, "foot-ray": 66, "hand-ray": 52 };

function lengthOf(body: Body, bone: Bone, side: Side): number {
  if (bone === "femur") return body.femurMm[side];
  if (bone === "tibia") return body.tibiaMm[side];
  return bone === "humerus" ? body.humerusMm : (small[bone] ?? 0);
}

function grownMm(bone: Bone, age: number, days: number): number {
  const years = Math.max(0, Math.min(days / 365.25, 16 - age));
  return Math.round(years * (bone === "femur" ? 12 : bone === "tibia" ? 9 : 0));
}

/** In a discrepancy the sound side is longer by what is planned for the short one, and a little more. */
function withDifference(body: Body, { group }: Case, operations: readonly PlannedOperation[]): Body {
  if (group !== "difference" && group !== "deformity") return body;
  const planned = (bone: Bone, side: Side) =>
    operations
      .flatMap(({ segments }) => segments)
      .filter((s) => s.bone === bone && s.side === side)
      .reduce((sum, s) => sum + s.plannedGainMm, 0);
  const sound = (bone: "femur" | "tibia", side: Side) => planned(bone, side === "left" ? "right" : "left");
  const longer = (bone: "femur" | "tibia", lengths: Body["femurMm"]) => ({
    left: lengths.left + sound(bone, "left"),
    right: lengths.right + sound(bone, "right"),
  });
  return { ...body, femurMm: longer("femur", body.femurMm), tibiaMm: longer("tibia", body.tibiaMm) };
}

/** Limb-length difference before and at last follow-up, for one-sided lengthening of the lower limb. */
function withResidual(segment: Segment, { group }: Case, body: Body): Segment {
  const { bone, gainMm, consolidationDay, side, episode } = segment.fields;
  if ((group !== "difference" && group !== "deformity") || (bone !== "femur" && bone !== "tibia") || (episode ?? 1) > 1 || !side)
    return segment;
  const opposite: Side = side === "left" ? "right" : "left";
  const leg = (of: Side) => body.femurMm[of] + body.tibiaMm[of];
  const differenceBeforeMm = Math.max(0, leg(opposite) - leg(side));
  const chance = chanceOf(seed, "residual", body.statureMm, segment.fields.surgeryDay ?? 0, bone);
  const final = gainMm && consolidationDay && chance.happens(0.8) ? differenceBeforeMm - gainMm + chance.whole(-2, 2) : null;
  return {
    ...segment,
    fields: { ...segment.fields, differenceBeforeMm, differenceTargetMm: chance.happens(0.8) ? 0 : null, differenceFinalMm: final },
  };
}

function stagesOf(operations: readonly PlannedOperation[], segments: readonly Segment[], birth: Day): readonly Operated[] {
  return operations.map(({ day }, number) => {
    const own = segments.filter(({ operation }) => operation === number);
    const lastSeen = Math.max(...own.map(({ fields }) => fields.lastFollowUpDay ?? day));
    return { number, surgery: day, lastSeen, segments: own, age: yearsBetween(birth, day) };
  });
}

function statusOf({ index }: Case, segments: readonly Segment[]): PersonDraft {
  const chance = chanceOf(seed, "status", index);
  const lastSeen = Math.max(...segments.map(({ fields }) => fields.lastFollowUpDay ?? 0));
  const recent = lastSeen > 20_000 - 60;
  if (recent) return { followUpStatus: "under-review", followUpStatusDay: lastSeen };
  const open = segments.some(({ fields }) => fields.endState === "healing");
  const followUpStatus = open ? "lost" : chance.among({ discharged: 6, "under-review": 3, transferred: 0.4 });
  return { followUpStatus, followUpStatusDay: lastSeen };
}
