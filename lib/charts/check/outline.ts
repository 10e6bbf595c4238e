import { textWidth } from "../place/text-width";
import type { SingleMark, TextMark } from "../scene";

export type Point = { readonly x: number; readonly y: number };
export type Box = { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number };
/** A line that ink follows. */
export type Stroke = { readonly from: Point; readonly to: Point };

/** The box in which a text stands, by the guessed widths of its letters. */
export function textBox({ x, y, text, size, anchor = "start", weight }: TextMark): Box {
  const width = textWidth(text, size) * (weight === "bold" ? 1.06 : 1);
  const left = anchor === "start" ? x : anchor === "end" ? x - width : x - width / 2;
  return { left, right: left + width, top: y - 0.74 * size, bottom: y + 0.2 * size };
}

/** Every point that a mark names; of a path, its corners. Text is met by its box. */
export function pointsOf(mark: SingleMark): readonly Point[] {
  switch (mark.mark) {
    case "text":
      return corners(textBox(mark));
    case "symbol":
      return corners({ left: mark.x - mark.size, right: mark.x + mark.size, top: mark.y - mark.size, bottom: mark.y + mark.size });
    case "rule":
      return [
        { x: mark.x1, y: mark.y1 },
        { x: mark.x2, y: mark.y2 },
      ];
    case "band":
      return corners({ left: mark.x, right: mark.x + mark.width, top: mark.y, bottom: mark.y + mark.height });
    case "path":
      return strokesOf(mark.d).flatMap(({ from, to }) => [from, to]);
  }
}

function corners({ left, right, top, bottom }: Box): Point[] {
  return [
    { x: left, y: top },
    { x: right, y: bottom },
  ];
}

/** The lines of a path of M, L, H, V and Z; any other letter makes a point that is no number, and so a warning. */
export function strokesOf(d: string): readonly Stroke[] {
  const strokes: Stroke[] = [];
  let [at, start]: [Point, Point] = [nowhere, nowhere];
  for (const [, letter = "", rest = ""] of d.matchAll(/([a-zA-Z])([^a-zA-Z]*)/g)) {
    const to = landing(letter, rest, at, start);
    if (letter === "M") start = to;
    else strokes.push({ from: at, to });
    at = to;
  }
  return strokes;
}

const nowhere: Point = { x: Number.NaN, y: Number.NaN };

function landing(letter: string, rest: string, at: Point, start: Point): Point {
  const [a = Number.NaN, b = Number.NaN] = rest
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  switch (letter) {
    case "M":
    case "L":
      return { x: a, y: b };
    case "H":
      return { x: a, y: at.y };
    case "V":
      return { x: at.x, y: a };
    case "Z":
      return start;
    default:
      return nowhere;
  }
}
