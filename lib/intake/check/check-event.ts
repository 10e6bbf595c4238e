import type { EventRow } from "@/lib/codebook";
import { hasFixator } from "./implant";
import type { RowFact } from "./segment-fact";

const ofFixators: ReadonlySet<string> = new Set(["pin-site-infection", "pin-or-wire-broken", "pin-loose", "frame-unstable"]);

/** An event of pins or frame needs a device that has them. */
export function checkEvent({ eventType }: EventRow, device: string | null): readonly RowFact[] {
  return ofFixators.has(eventType) && !hasFixator(device)
    ? [{ code: "fixator-event-without-fixator", field: "eventType", found: "an event of pins or frame beside a device without them" }]
    : [];
}
