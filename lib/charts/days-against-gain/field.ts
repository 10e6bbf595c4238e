import { quantileSorted, sortedCopy } from "@/lib/stats";
import { once } from "../figure/once";
import { layPlot, type Plot } from "../frame/plot";
import { type DaysAgainstGainRecord, partsOf } from "./record";
import type { TimeAndGain } from "./units";

/** What all fields of a figure share, so that they can be compared: ends of both axes, and the gain at which groups are. */
export type Extent = {
  readonly gainMm: number;
  readonly days: number;
  /** Days beyond which a mark stands over the field. */
  readonly far: number;
};

/** Both axes start at nothing, since the fixed part of the days is read there. Few very long times don't press the others together. */
export const extentOf = once(({ groups }: DaysAgainstGainRecord): Extent => {
  const parts = partsOf(groups);
  const days = sortedCopy(parts.flatMap((part) => part.days));
  const far = days.length === 0 ? Number.POSITIVE_INFINITY : 1.5 * quantileSorted(days, 0.98);
  const near = days.findLast((day) => day <= far) ?? 0;
  const gainMm = parts.flatMap((part) => part.gainMm).reduce((most, gain) => Math.max(most, gain), 10);
  return { gainMm, days: Math.max(30, near), far };
});

export type FieldPlace = { readonly x: number; readonly y: number; readonly width: number; readonly height: number };

export function layField(record: DaysAgainstGainRecord, extent: Extent, place: FieldPlace, { time, gain }: TimeAndGain): Plot {
  const over = partsOf(record.groups).some(({ days }) => days.some((day) => day > extent.far));
  return layPlot({
    left: place.x,
    top: place.y,
    width: place.width,
    height: place.height,
    gutter: over ? 22 : 0,
    x: { from: 0, to: extent.gainMm, unit: gain, title: "cm gained" },
    y: { from: 0, to: extent.days, unit: time, title: `${time.name}, ${record.definition.title.toLowerCase()}` },
  });
}
