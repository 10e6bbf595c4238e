import { type EventRow, findingSeverities, type SegmentRow } from "@/lib/codebook";
import { checkEvent } from "../check/check-event";
import { checkSegment } from "../check/check-segment";
import { knownAlone, type RowFact } from "../check/segment-fact";
import type { AnyRow } from "./blank-row";
import type { HeldIndex } from "./held-index";
import { partIn, type StrippedDraft, say } from "./stripped-draft";

/**
 * What a row says together with what is held of the same segment, or with a segment of these files: two sheets that each say a part must not
 * hold together what no sheet may say alone. The registry would refuse the whole commit for it; here it sets one row aside.
 */
export function meetMerged(drafts: readonly StrippedDraft[], held: HeldIndex | null): (draft: StrippedDraft) => void {
  // most loads have no event of another sheet's segment
  let devices: ReadonlyMap<string, string | null> | null = null;
  const deviceOf = (event: AnyRow) => {
    devices ??= devicesOf(drafts);
    return devices.get(segmentKey(event)) ?? held?.find("segment", event)?.device ?? null;
  };
  return (draft) => {
    const segment = partIn(draft, "segment");
    const known = segment && held?.find("segment", segment);
    if (held && segment && known) sayNewErrors(draft, checkSegment(mergedSegment(held, segment, known), knownAlone));
    if (segment && !known) return;
    for (const { table, row, nth } of draft.parts) {
      if (table !== "event") continue;
      const facts = checkEvent(row as EventRow, deviceOf(row) as string | null);
      sayNewErrors(draft, nth === null ? facts : facts.map((fact) => ({ ...fact, field: `${fact.field}.${nth}` })));
    }
  };
}

function devicesOf(drafts: readonly StrippedDraft[]): ReadonlyMap<string, string | null> {
  const devices = new Map<string, string | null>();
  for (const draft of drafts) {
    const segment = partIn(draft, "segment");
    if (segment) devices.set(segmentKey(segment), (segment.device ?? null) as string | null);
  }
  return devices;
}

function mergedSegment(held: HeldIndex, segment: AnyRow, known: AnyRow): SegmentRow {
  const merged: AnyRow = { ...segment };
  const here = held.asHeld("segment", segment);
  for (const field in here) merged[field] = here[field] ?? known[field] ?? null;
  return merged as SegmentRow;
}

function sayNewErrors(draft: StrippedDraft, facts: readonly RowFact[]): void {
  for (const fact of facts) {
    if (findingSeverities[fact.code] !== "error") continue;
    if (draft.facts.some(({ code, field }) => code === fact.code && field === fact.field)) continue;
    say(draft, { ...fact, found: `${fact.found}, with what is known of the segment` });
  }
}

function segmentKey({ person, bone, side, surgeryDay }: AnyRow): string {
  return `${person}|${bone}|${side}|${surgeryDay}`;
}
