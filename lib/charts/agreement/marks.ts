import type { Limits } from "../figure/source";
import type { Plot } from "../frame/plot";
import { apart } from "../place/apart";
import { swarm } from "../place/swarm";
import { symbolMarks } from "../place/symbols";
import { shownEstimate, shownLimits } from "../say/shown-estimate";
import { type ShownUnit, shownText } from "../say/shown-unit";
import type { Dash, Mark } from "../scene";
import type { AgreementGroup, AgreementRecord } from "./record";
import { markText } from "./say";

type Named = { readonly unit: ShownUnit; readonly name: string | null };

/** Each segment a mark; those on one spot stand side by side. */
export function segmentMarks(record: AgreementRecord, { marks }: AgreementGroup, plot: Plot, { unit, name }: Named): Mark[] {
  const most = Math.max(...record.groups.map((group) => group.marks.length));
  // one size for all fields, by the group that has the most
  const size = most <= 100 ? 3.6 : most <= 800 ? 2.4 : 1.5;
  const spots = marks.map(({ first, second }) => ({ x: plot.x((first + second) / 2), y: plot.y(first - second) }));
  const moved = swarm(spots, { radius: size, reach: 3 * size, slope: 0, field: plot });
  return symbolMarks({
    shape: "disc",
    size,
    ink: "series1",
    xs: moved.map(({ x }) => x),
    ys: moved.map(({ y }) => y),
    labelOf: (place) => markText(marks[place] as AgreementGroup["marks"][number], record, unit, name),
  });
}

type Level = { readonly at: Limits; readonly value: number; readonly dash: Dash; readonly label: string };

/** Bias and limits: the bands of their intervals behind the marks; their lines and, at the right, their numbers before them. */
export function levelMarks(group: AgreementGroup, plot: Plot, { unit, name }: Named): { behind: Mark[]; front: Mark[] } {
  const { bias, limits } = group;
  const level = (at: Limits | undefined, dash: Dash, text: string): Level[] =>
    at === undefined || at.estimate === null || at.lower === null
      ? []
      : [{ at, value: at.estimate, dash, label: name === null ? text : `${name}: ${text}` }];
  const levels = [
    ...level(bias, "solid", `bias ${shownEstimate(bias, unit)}`),
    ...(limits === null
      ? []
      : [
          ...level(limits.lower, "long", `lower limit of agreement ${shownLimits(limits.lower, unit)}`),
          ...level(limits.upper, "long", `upper limit of agreement ${shownLimits(limits.upper, unit)}`),
        ]),
  ];
  const zero: Mark = { mark: "rule", x1: plot.left, x2: plot.right, y1: plot.y(0), y2: plot.y(0), ink: "muted", weight: 1, dash: "short" };
  return {
    behind: [...levels.flatMap(({ at }) => bandMarks(at, plot)), zero],
    front: [...levels.map((one) => levelLine(one, plot)), ...levelNumbers(levels, plot, unit)],
  };
}

function bandMarks({ lower, upper }: Limits, plot: Plot): Mark[] {
  if (lower === null || upper === null) return [];
  const [top, foot] = [plot.y(upper), plot.y(lower)];
  return [{ mark: "band", x: plot.left, y: top, width: plot.right - plot.left, height: foot - top, ink: "deep", opacity: 0.14 }];
}

function levelLine({ value, dash, label }: Level, plot: Plot): Mark {
  const y = plot.y(value);
  return { mark: "rule", x1: plot.left, x2: plot.right, y1: y, y2: y, ink: "ink", weight: 1.5, dash, label };
}

function levelNumbers(levels: readonly Level[], plot: Plot, unit: ShownUnit): Mark[] {
  const ys = apart(
    levels.map(({ value }) => plot.y(value)),
    15,
  );
  return levels.map(({ value }, index) => ({
    mark: "text",
    x: plot.right + 8,
    y: (ys[index] ?? 0) + 4.4,
    text: shownText(value, unit),
    ink: "ink",
    size: 13,
  }));
}
