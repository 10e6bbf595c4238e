import { chanceOf } from "./chance";
import { seed } from "./parameters";
import type { Segment, SegmentDraft } from "./types";

/** How the sides of a bone were arranged, from the days of the person's operations; blank for one segment in eight. */
export function withArrangement(index: number, segments: readonly Segment[]): readonly Segment[] {
  return segments.map((segment) => ({ ...segment, fields: { ...segment.fields, arrangement: arrangementOf(index, segment, segments) } }));
}

function arrangementOf(index: number, { fields }: Segment, segments: readonly Segment[]): SegmentDraft["arrangement"] {
  const day = fields.surgeryDay ?? 0;
  const chance = chanceOf(seed, "arrangement", index, fields.bone ?? "");
  if (chance.happens(0.12)) return null;
  const otherSide = segments.filter((other) => other.fields.bone === fields.bone && other.fields.side !== fields.side);
  const apart = Math.min(...otherSide.map((other) => Math.abs((other.fields.surgeryDay ?? 0) - day)));
  if (otherSide.length === 0) return "one-side";
  if (apart === 0) return chance.among({ "both-at-once": 3, "one-after-the-other-same-anaesthetic": 7 });
  return apart <= 14 ? "same-admission-two-anaesthetics" : "separate-admissions";
}
