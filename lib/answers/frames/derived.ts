import { deviceKindOf, type Value } from "@/lib/codebook";
import {
  gainMeasures,
  healingStatus,
  type IndexDefinition,
  indexDefinitions,
  readIndex,
  reamedMinusNailMm,
  type SegmentCase,
  usualOptions,
} from "@/lib/outcomes";

/**
 * A derived field of a segment: its kind of device, healing status, days followed, a clock where it was measured, or a measure of its gain.
 * Bones that a clock sets apart count here: the condition itself says what is meant. An index of the unit's own that isn't among the clocks
 * is not recorded of anyone.
 */
export function derivedValue(field: string, segment: SegmentCase, clocks: readonly IndexDefinition[] = indexDefinitions): Value {
  if (field === "deviceKind") return deviceKindOf(segment.device);
  if (field === "healingStatus") return healingStatus(segment);
  if (field === "followUpDays") return followUpDays(segment);
  if (field === "reamedMinusNailMm") return reamedMinusNailMm(segment);
  const clock = clocks.find(({ id }) => id === field);
  if (clock) {
    const reading = readIndex(segment, clock, { boneNamed: true });
    return reading.reading === "measured" ? reading.value : null;
  }
  const reading = gainMeasures.find(({ id }) => id === field)?.read(segment, usualOptions);
  return reading?.measured ? reading.value : null;
}

/** From surgery to the last day on which anything was recorded; `null` when nothing was. */
function followUpDays(segment: SegmentCase): number | null {
  const days = [
    segment.lastFollowUpDay,
    segment.lastFilmDay,
    segment.lastNotHealedDay,
    segment.consolidationDay,
    segment.fullWeightBearingDay,
    segment.implantRemovalDay,
    segment.fixatorRemovalDay,
    ...segment.visits.map(({ visitDay }) => visitDay),
  ].filter((day) => day !== null);
  return days.length === 0 ? null : Math.max(...days) - segment.surgeryDay;
}
