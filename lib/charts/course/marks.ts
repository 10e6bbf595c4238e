import type { Plot } from "../frame/plot";
import { counted } from "../say/numbers";
import type { ShownUnit } from "../say/shown-unit";
import { valueText } from "../say/shown-unit";
import type { Mark } from "../scene";
import { type Course, type CourseGroup, lagsOf, ratesOf } from "./record";
import { courseText } from "./say";

export type CourseLook = { readonly unit: ShownUnit; readonly name: string | null };

/** Thin and light where there are many, so that a crowd is still of lines; visits are marked only where there are few. */
function strokeFor(count: number): { weight: number; opacity: number; dots: boolean } {
  if (count <= 40) return { weight: 1.1, opacity: 0.85, dots: true };
  return count <= 300 ? { weight: 0.8, opacity: 0.5, dots: false } : { weight: 0.5, opacity: Math.max(0.04, 60 / count), dots: false };
}

type Point = { readonly day: number; readonly mm: number };

function lineThrough(points: readonly Point[], plot: Plot): string {
  return `M${points.map(({ day, mm }) => `${plot.x(day)} ${plot.y(mm)}`).join("L")}`;
}

/** Each segment's course from nothing on day 0 through its visits; one without a prescription is muted and dotted. */
export function courseMarks({ courses }: CourseGroup, plot: Plot, { unit, name }: CourseLook): Mark[] {
  const { weight, opacity, dots } = strokeFor(courses.length);
  return courses.flatMap((course): Mark[] => {
    const points = course.visits.map(({ day, distractedMm }) => ({ day, mm: distractedMm }));
    if (points.length === 0) return [];
    const held = course.rateMmPerDay !== null;
    const ink = held ? "series1" : "muted";
    const d = lineThrough([{ day: 0, mm: 0 }, ...points], plot);
    const line: Mark = { mark: "path", d, ink, weight, opacity, dash: held ? "solid" : "dot", label: courseText(course, unit, name) };
    return dots ? [line, ...points.map((point): Mark => dotAt(point, plot, ink))] : [line];
  });
}

function dotAt({ day, mm }: Point, plot: Plot, ink: "series1" | "muted"): Mark {
  return { mark: "symbol", shape: "disc", x: plot.x(day), y: plot.y(mm), size: 1.8, ink };
}

/** What was prescribed: one line, or a light wedge from the slowest to the fastest rate, up to the top of the field; lines on a halo. */
export function prescriptionMarks(group: CourseGroup, plot: Plot): { behind: Mark[]; front: Mark[] } {
  const rates = ratesOf(group);
  if (rates === null) return { behind: [], front: [] };
  const most = plot.yAxis.to;
  const end = (rate: number) => ({ day: Math.min(plot.xAxis.to, most / rate), mm: Math.min(most, rate * plot.xAxis.to) });
  const [slowest, fastest] = rates;
  const lines = (rate: number): Mark[] => {
    const d = lineThrough([{ day: 0, mm: 0 }, end(rate)], plot);
    return [
      { mark: "path", d, ink: "paper", weight: 4 },
      { mark: "path", d, ink: "ink", weight: 1.5, dash: "long" },
    ];
  };
  if (slowest === fastest) return { behind: [], front: lines(slowest) };
  const corner = { day: plot.xAxis.to, mm: most };
  const between = end(fastest).mm === most && end(slowest).mm < most ? [corner] : [];
  const d = `${lineThrough([{ day: 0, mm: 0 }, end(fastest), ...between, end(slowest)], plot)}Z`;
  const wedge: Mark = { mark: "path", d, ink: "deep", fill: true, opacity: 0.14 };
  return { behind: [wedge], front: [...lines(slowest), ...lines(fastest)] };
}

/** Each segment's way ahead of or behind its own prescription, and the group's median and quartiles where the record has them. */
export function lagMarks(group: CourseGroup, plot: Plot, { unit, name }: CourseLook): Mark[] {
  const { weight, opacity } = strokeFor(group.courses.length);
  const lines = group.courses.flatMap((course): Mark[] => {
    const points = pointsOf(course);
    return points.length < 2 ? [] : [{ mark: "path", d: lineThrough(points, plot), ink: "series1", weight, opacity }];
  });
  const zero: Mark = { mark: "rule", x1: plot.left, x2: plot.right, y1: plot.y(0), y2: plot.y(0), ink: "ink", weight: 1.5, dash: "long" };
  return [...lines, zero, ...medianMarks(group, plot, { unit, name })];
}

function pointsOf(course: Course): readonly Point[] {
  const lags = lagsOf(course).map(({ day, aheadMm }) => ({ day, mm: aheadMm }));
  return lags.length === 0 ? [] : [{ day: 0, mm: 0 }, ...lags];
}

/** Median on its day, quartiles standing about it in brackets. */
function medianMarks({ lag = [] }: CourseGroup, plot: Plot, { unit, name }: CourseLook): Mark[] {
  return lag.flatMap(({ day, median, lower, upper, n }): Mark[] => {
    const x = plot.x(day);
    const where = `${valueText(Math.abs(median), unit)} ${median < 0 ? "behind" : "ahead"}`;
    const words = `day ${day}: median ${where}, quartiles ${valueText(lower, unit)} to ${valueText(upper, unit)}, ${counted(n, "segment")}`;
    const [top, foot] = [plot.y(upper), plot.y(lower)];
    const halo: Mark = { mark: "rule", x1: x, x2: x, y1: top - 2, y2: foot + 2, ink: "paper", weight: 6 };
    const line: Mark = { mark: "rule", x1: x, x2: x, y1: top, y2: foot, ink: "ink", weight: 1.5 };
    const label = name === null ? words : `${name}: ${words}`;
    return [halo, line, { mark: "symbol", shape: "diamond", x, y: plot.y(median), size: 4, ink: "ink", label }];
  });
}
