import type { Axis } from "../axis/axis";
import { uprightHairlines } from "../axis/bottom-axis";
import { layHead } from "../head/lay-head";
import { shownEstimate } from "../say/shown-estimate";
import type { ShownUnit } from "../say/shown-unit";
import type { Mark } from "../scene";
import { layBracket } from "../summary/lay-bracket";
import type { ProportionGroup, ProportionMark } from "./record";
import { headOf, markText } from "./say";

export type StripPlace = {
  readonly y: number;
  readonly width: number;
  readonly axis: Axis;
  readonly left: number;
  readonly right: number;
  readonly unit: ShownUnit;
  readonly name: string | null;
};

const tallestPx = 320;
const rowPx = 10;
const meansPx = 46;

/** One group: its head, a line a patient in the order of the value before, and under them the means between their brackets. */
export function layStrip(group: ProportionGroup, place: StripPlace): { marks: readonly Mark[]; end: number } {
  const { y, width, axis, left, right } = place;
  const head = layHead(headOf(group, place.unit), { x: 0, y, width });
  if (group.marks.length === 0) return { marks: head.marks, end: y + head.height };
  const top = y + head.height + 8;
  const each = Math.min(rowPx, tallestPx / group.marks.length);
  const foot = top + each * group.marks.length + 4;
  const means = meanMarks(group, place, foot);
  const end = foot + (means.length === 0 ? 6 : meansPx);
  const rows = patientMarks(group, place, { top: top + 2, each });
  const line: Mark = { mark: "rule", x1: left, x2: right, y1: foot, y2: foot, ink: "muted", weight: 1 };
  const ground = [...normMarks(group, place, { top, end }), ...uprightHairlines(axis, { from: top, to: end }), line];
  return { marks: [...head.marks, ...ground, ...rows, ...means], end };
}

function normMarks({ norm }: ProportionGroup, { axis, left, right, name }: StripPlace, { top, end }: { top: number; end: number }): Mark[] {
  if (!norm) return [];
  const [x1, x2] = [norm.from, norm.to].map((value) => Math.min(right, Math.max(left, axis.at(value)))) as [number, number];
  const label = name === null ? norm.label : `${name}: ${norm.label}`;
  return [{ mark: "band", x: x1, y: top, width: x2 - x1, height: end - top, ink: "deep", opacity: 0.14, label }];
}

/** Lowest before at the foot. Lines first, so that the marks of all lie over the lines of all. */
function patientMarks({ marks }: ProportionGroup, place: StripPlace, { top, each }: { top: number; each: number }): Mark[] {
  const sorted = [...marks].sort((a, b) => b.before - a.before || b.after - a.after || a.person - b.person);
  const rows = sorted.map((mark, index) => ({ mark, y: top + (index + 0.5) * each }));
  return [...rows.map((row) => wayMark(row, place, each)), ...rows.flatMap((row) => endMarks(row, place, each))];
}

type Row = { readonly mark: ProportionMark; readonly y: number };

export function isDerived({ beforeHow, afterHow }: ProportionMark): boolean {
  return beforeHow === "derived" || afterHow === "derived";
}

function wayMark({ mark, y }: Row, { axis }: StripPlace, each: number): Mark {
  const thin = each < 3;
  // rows closer than a line is wide would lie on each other as one dark block
  const light = Math.max(0.06, 0.5 * Math.min(1, each / 0.5));
  return {
    mark: "path",
    d: `M${axis.at(mark.before)} ${y}H${axis.at(mark.after)}`,
    ink: "muted",
    weight: thin ? 0.5 : 1,
    opacity: thin ? light : 1,
    dash: isDerived(mark) ? "dot" : "solid",
  };
}

function endMarks({ mark, y }: Row, { axis, unit, name }: StripPlace, each: number): Mark[] {
  const half = Math.min(4, Math.max(1.6, each * 0.6));
  const size = Math.min(4, Math.max(1.6, each * 0.7));
  const x = axis.at(mark.before);
  const derived = mark.afterHow === "derived";
  return [
    { mark: "rule", x1: x, x2: x, y1: y - half, y2: y + half, ink: "ink", weight: each < 3 ? 0.8 : 1.5 },
    {
      mark: "symbol",
      shape: derived ? "diamond" : "disc",
      x: axis.at(mark.after),
      y,
      size,
      ink: derived ? "series2" : "series1",
      label: markText(mark, unit, name),
    },
  ];
}

/** Mean before over mean after, each named at the left; a group too small for an interval shows its values alone. */
function meanMarks(group: ProportionGroup, place: StripPlace, foot: number): Mark[] {
  const { axis, left, right, unit, name } = place;
  return (["before", "after"] as const).flatMap((when, index): Mark[] => {
    const mean = group[when];
    const y = foot + 14 + index * 20;
    const said = `mean ${when} ${shownEstimate(mean, unit, "person")}`;
    const text: Mark = { mark: "text", x: 0, y: y + 4.2, text: when, ink: "muted", size: 12.5 };
    if (mean.lower === null) return [];
    return [text, ...layBracket(mean, axis.at, { y, label: name === null ? said : `${name}: ${said}`, edges: [left, right] })];
  });
}
