import type { Plot } from "../frame/plot";
import { symbolMarks } from "../place/symbols";
import { shownLimits } from "../say/shown-estimate";
import type { Mark, Shape } from "../scene";
import type { Series } from "../series";
import { standingBracketPath } from "../summary/lay-bracket";
import type { Extent } from "./field";
import { type DaysAgainstGainGroup, type Part, type PlacedMark, placed } from "./record";
import { equalGainText, equationText, markText } from "./say";
import type { TimeAndGain } from "./units";

export type GroupLook = {
  readonly series: Series;
  readonly size: number;
  readonly extent: Extent;
  readonly units: TimeAndGain;
  /** Said before every mark where several groups are drawn. */
  readonly name: string | null;
  /** Place among the groups of the field, so that brackets stand beside each other. */
  readonly index: number;
  readonly groups: number;
};

/** Small where there are many, so that a cloud is still of marks. */
export function sizeFor(count: number): number {
  return count <= 80 ? 4 : count <= 300 ? 3 : count <= 1000 ? 2.2 : 1.5;
}

/** Each segment of a group: healed in the group's shape, healed after further bone surgery a triangle, the unhealed an upright open tick. */
export function segmentMarks(group: DaysAgainstGainGroup, plot: Plot, look: GroupLook): Mark[] {
  const { series, size } = look;
  const { healed, rescued, unhealed } = placed(group);
  return [
    ...symbolsOf(healed, group, plot, look, { shape: series.shape, size }),
    ...symbolsOf(rescued, group, plot, look, { shape: "triangle", size: Math.max(2.4, size * 1.1) }),
    ...unhealed.marks.flatMap((mark) => unhealedMark(mark, group, plot, look)),
  ];
}

/** Height of a day in the field, or over it. */
function heightOf(days: number, plot: Plot, { extent }: GroupLook): number {
  return days > extent.far ? plot.top - 12 : plot.y(days);
}

function symbolsOf(
  { marks, gainMm, days }: Part,
  group: DaysAgainstGainGroup,
  plot: Plot,
  look: GroupLook,
  shaped: { readonly shape: Shape; readonly size: number },
): Mark[] {
  const dim = look.size < 3 ? { opacity: 0.7 } : {};
  return symbolMarks({
    ...shaped,
    ink: look.series.ink,
    ...dim,
    xs: gainMm.map(plot.x),
    ys: days.map((day) => heightOf(day, plot, look)),
    labelOf: (place) => markText(marks[place] as PlacedMark, group, look.units, look.name),
  });
}

function unhealedMark(mark: PlacedMark, group: DaysAgainstGainGroup, plot: Plot, look: GroupLook): Mark[] {
  const { series, size, units, name } = look;
  const { ink } = series;
  const [x, y] = [plot.x(mark.gainMm), heightOf(mark.days, plot, look)];
  const label = markText(mark, group, units, name);
  const arm = Math.max(5, size * 2);
  const tick: Mark = { mark: "path", d: `M${x - 3.5} ${y}H${x + 3.5}M${x} ${y}V${y - arm}`, ink, weight: 1.5, label };
  if (mark.status === "rescued") return [tick, { mark: "symbol", shape: "triangle", x, y, size: 2.6, ink }];
  return look.groups > 1 && size >= 3 ? [tick, { mark: "symbol", shape: series.shape, x, y, size: 2, ink }] : [tick];
}

/** A halo of paper under every line, laid before all lines so that of two on one place both are seen. */
export function haloMarks(group: DaysAgainstGainGroup, plot: Plot): Mark[] {
  const d = linePath(group, plot);
  return d === null ? [] : [{ mark: "path", d, ink: "paper", weight: 5 }];
}

/** The line over the gains that its group has. */
function linePath(group: DaysAgainstGainGroup, plot: Plot): string | null {
  const at = equationOf(group);
  const span = placed(group).healedSpan;
  return at === null || span === null ? null : segmentPath(plot, [span[0], at(span[0])], [span[1], at(span[1])]);
}

/** Days at a gain in mm. */
function equationOf({ line }: DaysAgainstGainGroup): ((gainMm: number) => number) | null {
  const [a, b] = [line?.fixedDays.estimate ?? null, line?.daysPerCm.estimate ?? null];
  return a === null || b === null ? null : (gainMm) => a + (b * gainMm) / 10;
}

/** The group's line over the gains that it has, dotted on to no gain, where the fixed days are read in their brackets. */
export function lineMarks(group: DaysAgainstGainGroup, plot: Plot, look: GroupLook): Mark[] {
  const [d, at, span] = [linePath(group, plot), equationOf(group), placed(group).healedSpan];
  if (d === null || at === null || span === null) return [];
  const { ink, dash } = look.series;
  const fixed = segmentPath(plot, [0, at(0)], [span[0], at(span[0])]);
  return [
    { mark: "path", d: fixed, ink, weight: 1, dash: "dot" },
    { mark: "path", d, ink, weight: 2, dash, label: lineLabel(group, look) },
    ...fixedMarks(group, plot, look),
  ];
}

function lineLabel({ line, label }: DaysAgainstGainGroup, { units, name }: GroupLook): string {
  const text = line === null ? "" : equationText(line, units);
  return name === null ? `line: ${text}` : `${label}: line ${text}`;
}

type Spot = readonly [gainMm: number, days: number];

/** A straight line, cut where it leaves the field. */
function segmentPath(plot: Plot, from: Spot, to: Spot): string {
  const [x1, y1, x2, y2] = [plot.x(from[0]), plot.y(from[1]), plot.x(to[0]), plot.y(to[1])];
  const [t1, t2] = [cutAt(y1, y2, plot), 1 - cutAt(y2, y1, plot)];
  const point = (t: number) => `${x1 + t * (x2 - x1)} ${y1 + t * (y2 - y1)}`;
  return t1 < t2 ? `M${point(t1)}L${point(t2)}` : `M${point(0)}L${point(0)}`;
}

/** How far along from `y` the field begins. */
function cutAt(y: number, other: number, { top, bottom }: Plot): number {
  if (y > bottom && other !== y) return Math.min(1, (bottom - y) / (other - y));
  if (y < top && other !== y) return Math.min(1, (top - y) / (other - y));
  return 0;
}

const bracketGapPx = 13;

/** The fixed days between their brackets, beside the axis. */
function fixedMarks({ line }: DaysAgainstGainGroup, plot: Plot, { series, index, units, name }: GroupLook): Mark[] {
  if (line === null || line.fixedDays.estimate === null) return [];
  const x = plot.left + 7 + index * bracketGapPx;
  const label = `${name === null ? "" : `${name}: `}fixed ${shownLimits(line.fixedDays, units.time)}`;
  return standing(line.fixedDays as DaysLimits, plot, { x, ink: series.ink, shape: series.shape, label });
}

type DaysLimits = { readonly estimate: number; readonly lower: number | null; readonly upper: number | null };
type Standing = { readonly x: number; readonly ink: Series["ink"]; readonly shape: Series["shape"]; readonly label: string };

/** An estimate of days, standing between brackets; what lies outside the field has none. */
function standing({ estimate, lower, upper }: DaysLimits, plot: Plot, { x, ink, shape, label }: Standing): Mark[] {
  const y = plot.y(estimate);
  if (y > plot.bottom || y < plot.top) return [];
  const centre: Mark = { mark: "symbol", shape, x, y, size: 3.4, ink, label };
  if (lower === null || upper === null) return [centre];
  const d = standingBracketPath(x, plot.y(lower), plot.y(upper), { half: 4, top: plot.top, bottom: plot.bottom });
  return [{ mark: "path", d, ink, weight: 1.3 }, centre];
}

/** Days at the gain at which groups are compared, between their brackets, beside each other. */
export function equalGainMarks(group: DaysAgainstGainGroup, plot: Plot, { series, index, groups, units, name }: GroupLook): Mark[] {
  const at = group.daysAtMedianGain ?? null;
  if (at === null || at.days === null) return [];
  const x = plot.x(at.gainMm) + (index - (groups - 1) / 2) * bracketGapPx;
  const label = `${name === null ? "" : `${name}: `}${equalGainText(group, units)}`;
  const limits = { estimate: at.days, lower: at.lower, upper: at.upper };
  return standing(limits, plot, { x, ink: "ink", shape: series.shape, label });
}

/** Another group's line behind this one's marks, thin and muted. */
export function ghostLine(group: DaysAgainstGainGroup, plot: Plot): Mark[] {
  const d = linePath(group, plot);
  return d === null ? [] : [{ mark: "path", d, ink: "muted", weight: 1, dash: "short" }];
}
