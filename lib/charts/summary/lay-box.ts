import type { Mark } from "../scene";

export const boxPx = 8;

type Quartiles = { readonly lower: number | null; readonly median: number | null; readonly upper: number | null };
type Scale = { readonly x: (value: number) => number; readonly right: number };

/** The quartiles as a hairline box with the median across it; an upper quartile that was not reached leaves the box open. */
export function layBox({ lower, median, upper }: Quartiles, { x, right }: Scale, { y, label }: { y: number; label?: string }): Mark[] {
  const named = label === undefined ? {} : { label };
  const marks: Mark[] = [];
  if (lower !== null) {
    const from = x(lower);
    const d = upper === null ? `M${right} ${y}H${from}V${y + boxPx}H${right}` : `M${from} ${y}H${x(upper)}V${y + boxPx}H${from}Z`;
    marks.push({ mark: "path", d, ink: "muted", weight: 1, ...named });
  }
  if (median !== null) {
    const at = x(median);
    marks.push({ mark: "rule", x1: at, x2: at, y1: y - 2, y2: y + boxPx + 2, ink: "ink", weight: 2, ...(lower === null ? named : {}) });
  }
  return marks;
}
