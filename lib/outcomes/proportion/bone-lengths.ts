import type { SegmentCase } from "../case";
import { bodyMeasureAt, type Moment, type PersonCase } from "./person-case";

export type LengthReading = { readonly lengthMm: number; readonly source: "measured" | "derived" };
type Bone = "femur" | "tibia";
type Side = "left" | "right";

const columns = {
  femur: { left: "femurLeftMm", right: "femurRightMm" },
  tibia: { left: "tibiaLeftMm", right: "tibiaRightMm" },
} as const;

/**
 * Length of one bone of a person before or after, measured, or derived from the person's own segments: before, the first recorded length;
 * after, the last final length, else the length before with every gain added. A bone that was not lengthened keeps its length.
 */
export function boneLengthMm(person: PersonCase, bone: Bone, side: Side, moment: Moment): LengthReading | null {
  const column = columns[bone][side];
  const body = bodyMeasureAt(person, moment, (one) => one[column] !== null);
  if (body) return { lengthMm: body[column] as number, source: "measured" };
  const own = person.segments.filter((one) => one.bone === bone && one.side === side).sort((a, b) => a.surgeryDay - b.surgeryDay);
  return own.length > 0 ? fromSegments(person, bone, side, moment, own) : unlengthened(person, column, moment);
}

function fromSegments(person: PersonCase, bone: Bone, side: Side, moment: Moment, own: readonly SegmentCase[]): LengthReading | null {
  const first = own[0]?.boneLengthBeforeMm ?? null;
  if (moment === "before") return first === null ? null : { lengthMm: first, source: "derived" };
  const final = own.at(-1)?.boneLengthFinalMm ?? null;
  if (final !== null) return { lengthMm: final, source: "derived" };
  const before = first ?? boneLengthMm({ ...person, segments: person.segments }, bone, side, "before")?.lengthMm ?? null;
  if (before === null || own.some((one) => one.gainMm === null)) return null;
  return { lengthMm: before + own.reduce((sum, one) => sum + (one.gainMm ?? 0), 0), source: "derived" };
}

/** In adults a bone that nobody lengthened is as long after as before. */
function unlengthened(
  person: PersonCase,
  column: "femurLeftMm" | "femurRightMm" | "tibiaLeftMm" | "tibiaRightMm",
  moment: Moment,
): LengthReading | null {
  if (moment === "before" || (person.ageAtSurgeryYears ?? 0) < 18) return null;
  const body = bodyMeasureAt(person, "before", (one) => one[column] !== null);
  return body ? { lengthMm: body[column] as number, source: "derived" } : null;
}
