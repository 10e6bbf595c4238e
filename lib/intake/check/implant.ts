import { fixatorDevices, nailDevices } from "@/lib/codebook";
import type { SegmentCheck } from "./segment-fact";

const nails: ReadonlySet<string> = new Set([...nailDevices, "other"]);
const fixators: ReadonlySet<string> = new Set([...fixatorDevices, "other"]);
const leastRoomMm = 2;

/** A stroke needs a nail that has one. */
export const checkStrokeNeedsNail: SegmentCheck = ({ nailStrokeMm, device }) =>
  nailStrokeMm === null || device === null || nails.has(device)
    ? []
    : [{ code: "stroke-without-nail", field: "nailStrokeMm", found: "a stroke beside a device that has none" }];

/** A removal of the fixator needs a fixator. */
export const checkFixatorEvent: SegmentCheck = ({ fixatorRemovalDay, device }) =>
  fixatorRemovalDay === null || hasFixator(device)
    ? []
    : [{ code: "fixator-event-without-fixator", field: "fixatorRemovalDay", found: "a fixator’s removal beside a device without one" }];

/** Whether a device has parts outside the skin; a blank one may have. */
export function hasFixator(device: string | null): boolean {
  return device === null || fixators.has(device);
}

/** No nail lengthens by more than its stroke; outside the canal it may be used otherwise. */
export const checkStroke: SegmentCheck = ({ gainMm, nailStrokeMm, nailUse }) =>
  gainMm === null || nailStrokeMm === null || nailUse === "outside-canal" || gainMm <= nailStrokeMm
    ? []
    : [{ code: "gain-over-stroke", field: "nailStrokeMm", found: `a gain of ${gainMm} mm on a stroke of ${nailStrokeMm} mm` }];

/** The canal is reamed at least 2 mm wider than the nail (common practice, no source). */
export const checkReaming: SegmentCheck = ({ reamedDiameterMm, nailDiameterMm, nailUse }) =>
  reamedDiameterMm === null ||
  nailDiameterMm === null ||
  nailUse === "outside-canal" ||
  reamedDiameterMm - nailDiameterMm >= leastRoomMm - 1e-9
    ? []
    : [
        {
          code: "reamed-not-over-nail",
          field: "reamedDiameterMm",
          found: `${Number((reamedDiameterMm - nailDiameterMm).toFixed(1))} mm over the nail`,
        },
      ];
