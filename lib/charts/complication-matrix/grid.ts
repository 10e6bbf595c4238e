import { thresholds } from "@/lib/stats";
import { type Axis, axisOf } from "../axis/axis";
import { isWide } from "../figure/figure";
import type { ShareForFigure } from "../figure/source";
import { breakWords } from "../place/break-words";
import { spanOf } from "../place/span-of";
import { textWidth, wrapText } from "../place/text-width";
import type { ComplicationMatrixRecord } from "./record";

/** Where columns stand. On a phone a row takes three lines: its name, its counts, its share. */
export type Grid = {
  readonly wide: boolean;
  readonly width: number;
  readonly labelWidth: number;
  /** Centre of each class column and its words, broken into lines. */
  readonly columns: readonly { readonly id: string; readonly x: number; readonly lines: readonly string[] }[];
  readonly columnWidth: number;
  readonly totalX: number;
  readonly axis: Axis;
  readonly left: number;
  readonly right: number;
  readonly most: number;
};

export const headSize = 12;
const totalPx = 52;
/** Room for the percent at the right of a wide row. */
const percentPx = 44;

export function gridOf(record: ComplicationMatrixRecord, width: number): Grid {
  const wide = isWide(width);
  const labelWidth = wide ? Math.min(230, width * 0.27) : width;
  const cells = wide ? Math.min(width - labelWidth - totalPx - 230, record.classes.length * widestHead(record)) : width - totalPx;
  const columnWidth = cells / Math.max(1, record.classes.length);
  const from = wide ? labelWidth : 0;
  const columns = record.classes.map(({ id, label }, index) => ({
    id,
    x: from + (index + 0.5) * columnWidth,
    lines: wrapText(breakWords(label, headSize, columnWidth - 4), headSize, columnWidth - 4),
  }));
  const left = wide ? labelWidth + cells + totalPx + 16 : 12;
  const right = wide ? width - percentPx - 8 : width - 12;
  const axis = axisFor(record, left, right);
  return { wide, width, labelWidth, columns, columnWidth, totalX: from + cells + totalPx / 2, axis, left, right, most: mostEvents(record) };
}

/** The widest word of a head sets the columns. */
function widestHead({ classes }: ComplicationMatrixRecord): number {
  const words = classes.flatMap(({ label }) => label.split(" "));
  return Math.max(46, ...words.map((word) => textWidth(word, headSize) + 12));
}

function axisFor(record: ComplicationMatrixRecord, start: number, end: number): Axis {
  const unit = { name: "", perRecord: 1, digits: 2, valueDigits: 2 };
  return axisOf({ from: 0, to: mostShare(record), start, end, unit, percent: true, ticks: 4 });
}

/** All matrices share the axis, so that groups can be compared; a group of few patients, whose intervals reach far, doesn't set it. */
function mostShare(record: ComplicationMatrixRecord): number {
  const shares = sharesIn(record);
  const large = shares.filter(({ patients }) => patients >= thresholds.patientsForCurve);
  return Math.min(1, Math.max(0.1, spanOf((large.length > 0 ? large : shares).map(reachOf))?.[1] ?? 0));
}

const reachOf = ({ upper, estimate }: ShareForFigure) => upper ?? estimate ?? 0;
const sharesIn = ({ groups }: ComplicationMatrixRecord) => groups.flatMap(({ rows }) => rows.map(({ share }) => share));

/** Whether a group of few patients reaches beyond the axis that the others set. */
export function runsBeyond(record: ComplicationMatrixRecord): boolean {
  const { to } = axisFor(record, 0, 1);
  return sharesIn(record).some((share) => reachOf(share) > to);
}

function mostEvents({ groups }: ComplicationMatrixRecord): number {
  return Math.max(1, spanOf(groups.flatMap(({ rows }) => rows.flatMap(({ counts }) => Object.values(counts))))?.[1] ?? 1);
}
