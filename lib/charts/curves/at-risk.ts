import { thinned } from "../axis/bottom-axis";
import type { Plot } from "../frame/plot";
import { grouped } from "../say/numbers";
import type { Mark } from "../scene";
import type { Series } from "../series";
import { atRiskOn, type CurveGroup } from "./record";

const rowPx = 18;
const size = 13;

/** Numbers at risk under the numbers of the axis, a row a group, its shape before it. */
export function atRiskMarks(
  groups: readonly { readonly group: CurveGroup; readonly series: Series | null }[],
  plot: Plot,
  { x, y }: { readonly x: number; readonly y: number },
): { marks: Mark[]; end: number } {
  const title: Mark = { mark: "text", x, y: y + 12, text: "at risk", ink: "muted", size: 12.5 };
  const columns = thinned(plot.xAxis.ticks.map((tick) => ({ ...tick, text: widest(groups, tick.value) })));
  const rows = groups.flatMap(({ group, series }, index): Mark[] => {
    const middle = y + 18 + index * rowPx + rowPx / 2;
    const shape: Mark[] = series === null ? [] : [{ mark: "symbol", shape: series.shape, x: x + 5, y: middle, size: 4, ink: series.ink }];
    const numbers = columns.map(
      ({ at, value }): Mark => ({
        mark: "text",
        x: at,
        y: middle + size * 0.34,
        text: grouped(atRiskOn(group, value)),
        ink: "ink",
        size,
        anchor: "middle",
      }),
    );
    return [...shape, ...numbers];
  });
  return { marks: [title, ...rows], end: y + 18 + groups.length * rowPx + 4 };
}

/** The longest number of a column, so that columns that would touch are thinned. */
function widest(groups: readonly { readonly group: CurveGroup }[], day: number): string {
  return groups.map(({ group }) => grouped(atRiskOn(group, day))).reduce((a, b) => (b.length > a.length ? b : a), "");
}
