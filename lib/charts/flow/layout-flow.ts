import { type FigureOptions, isWide, requireWidth, usualWidthPx } from "../figure/figure";
import { nothingScene } from "../figure/nothing";
import { wrapText } from "../place/text-width";
import { countedIn, grouped } from "../say/numbers";
import { shownUnit } from "../say/shown-unit";
import type { Mark, Scene } from "../scene";
import { type FlowRecord, type Walked, walked } from "./record";

export const flowTitle = "From the registry to the analysed";

const sizes = { stays: 14.5, leaves: 13.5, counts: 12.5 } as const;
const linePx = 18;

/**
 * The flow of exclusions: a stem as wide as the segments that are left, which narrows where some leave, each leaving with its reason.
 * @throws RangeError when the width is below 240 px, a unit is asked for, or the steps don't add up
 */
export function layoutFlow(record: FlowRecord, { width = usualWidthPx, unit }: FigureOptions = {}): Scene {
  requireWidth("layoutFlow", width);
  shownUnit("", unit);
  const steps = walked(record);
  const [first] = steps;
  if (first === undefined) return nothingScene({ width, title: flowTitle }, "No registry to start from.");
  const stemPx = isWide(width) ? 130 : 60;
  const view: View = { width, stemPx, most: Math.max(1, first.left) };
  const marks: Mark[] = [];
  let cursor = 4;
  let before = first.left;
  for (const step of steps) {
    const placed = step.kind === "stays" ? staysMarks(step, view, cursor) : leavesMarks(step, before, view, cursor);
    marks.push(...placed.marks);
    cursor = placed.end;
    before = step.left;
  }
  return { width, title: flowTitle, description: describe(steps), height: Math.ceil(cursor + 6), marks };
}

type View = { readonly width: number; readonly stemPx: number; readonly most: number };
type Placed = { readonly marks: readonly Mark[]; readonly end: number };

const textGapPx = 22;

function stemWidth(segments: number, { stemPx, most }: View): number {
  return (segments / most) * stemPx;
}

/** Words of a step beside the stem: what, then how many. */
function wordsOf(step: Walked, { width, stemPx }: View) {
  const stays = step.kind === "stays";
  const room = width - stemPx - textGapPx;
  const size = stays ? sizes.stays : sizes.leaves;
  const counts = countedIn(step.segments, step.patients);
  const upper = `${step.words.charAt(0).toUpperCase()}${step.words.slice(1)}`;
  return [
    ...wrapText(stays ? counts : upper, size * (stays ? 1.06 : 1), room).map((text) => ({ text, size, bold: stays, ink: "ink" as const })),
    ...wrapText(stays ? step.words : counts, sizes.counts, room).map((text) => ({
      text,
      size: sizes.counts,
      bold: false,
      ink: "muted" as const,
    })),
  ];
}

function textMarks(step: Walked, view: View, y: number): Placed {
  const lines = wordsOf(step, view);
  const marks = lines.map(
    ({ text, size, bold, ink }, index): Mark => ({
      mark: "text",
      x: view.stemPx + textGapPx,
      y: y + 14 + index * linePx,
      text,
      ink,
      size,
      ...(bold ? { weight: "bold" as const } : {}),
    }),
  );
  return { marks, end: y + lines.length * linePx };
}

/** Who is left: the stem in ink, as wide as they are many, with a bar across it. */
function staysMarks(step: Walked, view: View, y: number): Placed {
  const words = textMarks(step, view, y);
  const end = words.end + 10;
  const width = stemWidth(step.left, view);
  return {
    marks: [
      { mark: "band", x: 0, y, width, height: end - y, ink: "series1", label: stepText(step) },
      { mark: "rule", x1: width, x2: view.stemPx + 14, y1: y + 9, y2: y + 9, ink: "muted", weight: 1 },
      ...words.marks,
    ],
    end,
  };
}

/** Who leaves: a light part beside the stem, as wide as they are many, and a line from it to the words; below it the stem is narrower. */
function leavesMarks(step: Walked, before: number, view: View, y: number): Placed {
  const words = textMarks(step, view, y);
  const end = words.end + 10;
  const [left, from] = [stemWidth(step.left, view), stemWidth(before, view)];
  const middle = y + 9;
  return {
    marks: [
      { mark: "band", x: 0, y, width: left, height: end - y, ink: "series1" },
      { mark: "band", x: left, y, width: from - left, height: 18, ink: "series1", opacity: 0.3, label: stepText(step) },
      { mark: "path", d: arrowPath(from + 3, view.stemPx + 16, middle), ink: "muted", weight: 1 },
      ...words.marks,
    ],
    end,
  };
}

function arrowPath(from: number, to: number, y: number): string {
  return `M${from} ${y}H${to}M${to - 4} ${y - 3.5}L${to} ${y}L${to - 4} ${y + 3.5}`;
}

export function stepText({ kind, words, segments, patients, left }: Walked): string {
  return kind === "stays"
    ? `${countedIn(segments, patients)} ${words}`
    : `${countedIn(segments, patients)} left out: ${words}; ${grouped(left)} left`;
}

function describe(steps: readonly Walked[]): string {
  return `A stem that narrows where segments are left out. ${steps.map((step) => `${stepText(step)}.`).join(" ")}`;
}
