import type { SegmentCase } from "../case";
import type { PersonCase } from "./person-case";

/** Femur or tibia. Bones of the arm and rays stand apart unless they are named. */
export function isLeg(bone: SegmentCase["bone"]): boolean {
  return bone === "femur" || bone === "tibia";
}

/** Lengthened femora and tibiae of a person: bones of the arm, rays and transports change no leg. */
export function legsOf({ segments }: PersonCase): readonly SegmentCase[] {
  return segments.filter(({ bone, procedure }) => isLeg(bone) && procedure !== "transport");
}
