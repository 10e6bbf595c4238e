/** Why a measure can't be computed for a segment or person; the first that applies, in this order (ids.md §7). */
export const reasons = [
  "not-lengthening",
  "bone-apart",
  "two-level",
  "one-side-only",
  "still-distracting",
  "no-gain",
  "gain-not-positive",
  "gain-under-10mm",
  "healing-date-missing",
  "other-criterion",
  "not-at-landmark",
  "no-start",
  "no-end",
  "days-out-of-order",
  "not-a-fixator",
  "no-target",
  "no-bone-length",
  "no-visits",
  "no-reference",
  "not-looked-for",
  "not-recorded",
] as const;
export type Reason = (typeof reasons)[number];

export const healingStatuses = [
  "healed",
  "still-distracting",
  "rescued",
  "ended-unhealed",
  "healing-date-missing",
  "not-healed-at-last-film",
] as const;
export type HealingStatus = (typeof healingStatuses)[number];

/** Devices that a fixator event may stand with (codebook.md); the `fixator` index takes these. */
export const fixatorDevices = [
  "monolateral-fixator",
  "circular-fixator",
  "hexapod-circular-fixator",
  "lengthening-over-nail",
  "lengthening-then-nailing",
  "lengthening-then-plating",
] as const;

/** Devices whose stroke can be recorded. */
export const nailDevices = ["magnetic-nail", "motorised-nail-receiver-under-skin", "mechanical-nail"] as const;

/** What a bone is lengthened with, nails against frames; a frame that a nail or plate follows or lies within is one. */
export const deviceKinds = ["nail", "frame", "other"] as const;
export type DeviceKind = (typeof deviceKinds)[number];

/** @example deviceKindOf("lengthening-over-nail") // => "frame" */
export function deviceKindOf(device: string | null): DeviceKind | null {
  if (device === null) return null;
  const among = (list: readonly string[]) => list.includes(device);
  return among(nailDevices) ? "nail" : among(fixatorDevices) ? "frame" : "other";
}
