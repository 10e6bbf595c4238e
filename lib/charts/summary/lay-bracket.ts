import type { Limits } from "../figure/source";
import type { Ink, Mark } from "../scene";

type Place = {
  readonly y: number;
  readonly label?: string;
  readonly ink?: Ink;
  readonly hollow?: boolean;
  readonly size?: number;
  /** Where the axis ends, px. */
  readonly edges?: readonly [left: number, right: number];
};

/**
 * An estimate between the brackets of its interval; without an interval the estimate alone; without an estimate nothing. An end beyond
 * the axis has no bracket, an estimate beyond it no mark: the line runs to the edge.
 */
export function layBracket(
  limits: Limits,
  x: (value: number) => number,
  { y, label, ink = "ink", hollow, size = 4, edges }: Place,
): Mark[] {
  if (limits.estimate === null) return [];
  const centre: Mark = {
    mark: "symbol",
    shape: "diamond",
    x: x(limits.estimate),
    y,
    size,
    ink,
    ...(hollow ? { hollow } : {}),
    ...(label === undefined ? {} : { label }),
  };
  if (limits.lower === null || limits.upper === null) return [centre];
  const [left, right] = edges ?? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  const [from, to] = [x(limits.lower), x(limits.upper)];
  // what lies wholly beyond an edge is a stub that leads there
  const stub = from > right ? `M${right - stubPx} ${y}H${right}` : to < left ? `M${left} ${y}H${left + stubPx}` : null;
  const line: Mark = { mark: "path", d: stub ?? bracketPath(from, to, y, { left, right }), ink, weight: 1.5 };
  if (centre.x >= left && centre.x <= right) return [line, centre];
  return [label === undefined ? line : { ...line, label }];
}

const armPx = 3;
const stubPx = 8;

/** `[—]`: the line of an interval and the brackets at its ends; past an edge it has none. */
export function bracketPath(
  from: number,
  to: number,
  y: number,
  { half = 6, left = Number.NEGATIVE_INFINITY, right = Number.POSITIVE_INFINITY } = {},
): string {
  const opening = from < left ? "" : `M${from + armPx} ${y - half}H${from}V${y + half}H${from + armPx}`;
  const closing = to > right ? "" : `M${to - armPx} ${y - half}H${to}V${y + half}H${to - armPx}`;
  return `M${Math.max(left, from)} ${y}H${Math.min(right, to)}${opening}${closing}`;
}

/** The same standing up: `from` the lower end to `to` the upper, y running downwards; past an edge it has no bracket. */
export function standingBracketPath(
  x: number,
  from: number,
  to: number,
  { half = 5, top = Number.NEGATIVE_INFINITY, bottom = Number.POSITIVE_INFINITY } = {},
): string {
  const foot = from > bottom ? "" : `M${x - half} ${from - armPx}V${from}H${x + half}V${from - armPx}`;
  const head = to < top ? "" : `M${x - half} ${to + armPx}V${to}H${x + half}V${to + armPx}`;
  return `M${x} ${Math.min(bottom, from)}V${Math.max(top, to)}${foot}${head}`;
}
