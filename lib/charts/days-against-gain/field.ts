import { quantileSorted, sortedCopy } from "@/lib/stats";
import { layPlot, type Plot } from "../frame/plot";
import { type DaysAgainstGainRecord, drawable } from "./record";
import type { TimeAndGain } from "./units";

/** What all fields of a figure share, so that they can be compared: ends of both axes, and the gain at which groups are. */
export type Extent = {
  readonly gainMm: number;
  readonly days: number;
  /** Days beyond which a mark stands over the field. */
  readonly far: number;
};

/** Both axes start at nothing, since the fixed part of the days is read there. Few very long times don't press the others together. */
export function extentOf({ groups }: DaysAgainstGainRecord): Extent {
  const marks = groups.flatMap((group) => drawable(group));
  const days = sortedCopy(marks.map((mark) => mark.days));
  const far = days.length === 0 ? Number.POSITIVE_INFINITY : 1.5 * quantileSorted(days, 0.98);
  const near = days.filter((day) => day <= far);
  return { gainMm: marks.reduce((most, mark) => Math.max(most, mark.gainMm), 10), days: Math.max(30, near.at(-1) ?? 0), far };
}

export type FieldPlace = { readonly x: number; readonly y: number; readonly width: number; readonly height: number };

export function layField(record: DaysAgainstGainRecord, extent: Extent, place: FieldPlace, { time, gain }: TimeAndGain): Plot {
  const over = record.groups.some((group) => drawable(group).some(({ days }) => days > extent.far));
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
