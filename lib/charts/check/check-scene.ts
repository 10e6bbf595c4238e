import { apart } from "../place/symbols";
import type { Scene, SingleMark, TextMark } from "../scene";
import { type Box, pointsOf, type Stroke, strokesOf, textBox } from "./outline";

export type SceneWarning = {
  readonly code: "no-number" | "outside" | "texts-overlap" | "text-struck" | "unnamed" | "too-many-series";
  /** What, in words: never more than the scene itself shows. */
  readonly what: string;
};

/** What may stand over the edge: half a stroke, and what the guess of a text's width exceeds. */
const edgePx = 1.5;
/** Boxes are guessed on the wide side: so much of two may lie over each other. */
const overlapPx = 1.5;

/**
 * What is wrong with a drawing, so that a test can refuse it: a coordinate that is no number, a mark or text outside the scene, texts over
 * each other, ink through a text, a figure without a name or a mark with an empty one, more series than can be told apart.
 * @example checkScene({ width: 10, height: 10, title: "t", description: "d", marks: [] }) // => []
 */
export function checkScene(scene: Scene): readonly SceneWarning[] {
  const marks = scene.marks.flatMap(apart);
  const broken = marks.filter((mark) => pointsOf(mark).some(({ x, y }) => !Number.isFinite(x) || !Number.isFinite(y)));
  const sound = marks.filter((mark) => !broken.includes(mark));
  return [
    ...unnamed(scene),
    ...broken.map((mark): SceneWarning => ({ code: "no-number", what: nameOf(mark) })),
    ...sound.filter((mark) => isOutside(mark, scene)).map((mark): SceneWarning => ({ code: "outside", what: nameOf(mark) })),
    ...textTroubles(sound),
    ...tooManySeries(scene),
  ];
}

function unnamed({ title, description, width, height, marks }: Scene): SceneWarning[] {
  const missing = [
    title.trim() === "" && "the figure has no title",
    description.trim() === "" && "the figure has no description",
    !(width > 0 && height > 0 && Number.isFinite(width * height)) && "the figure has no size",
    marks.some((mark) => "label" in mark && mark.label?.trim() === "") && "a mark has an empty label",
  ];
  return missing.filter((what) => what !== false).map((what) => ({ code: "unnamed", what }));
}

function isOutside(mark: SingleMark, { width, height }: Scene): boolean {
  return pointsOf(mark).some(({ x, y }) => x < -edgePx || y < -edgePx || x > width + edgePx || y > height + edgePx);
}

function textTroubles(marks: readonly SingleMark[]): SceneWarning[] {
  const texts = marks.filter((mark) => mark.mark === "text").map((mark) => ({ mark, box: textBox(mark) }));
  const strokes = marks.flatMap(inkOf);
  const warnings: SceneWarning[] = [];
  for (const [index, { mark, box }] of texts.entries()) {
    for (const other of texts.slice(index + 1))
      if (meet(box, other.box)) warnings.push({ code: "texts-overlap", what: `${said(mark)} and ${said(other.mark)}` });
    if (strokes.some((stroke) => strikes(stroke, box))) warnings.push({ code: "text-struck", what: said(mark) });
  }
  return warnings;
}

/** The lines of ink of a mark. Bands and filled paths are grounds, on which text may stand. */
function inkOf(mark: SingleMark): readonly Stroke[] {
  if (mark.mark === "rule") return [{ from: { x: mark.x1, y: mark.y1 }, to: { x: mark.x2, y: mark.y2 } }];
  if (mark.mark === "path") return mark.fill ? [] : strokesOf(mark.d);
  if (mark.mark !== "symbol") return [];
  const { x, y, size } = mark;
  return [{ from: { x: x - size * 0.7, y: y - size * 0.7 }, to: { x: x + size * 0.7, y: y + size * 0.7 } }];
}

function meet(a: Box, b: Box): boolean {
  const wide = Math.min(a.right, b.right) - Math.max(a.left, b.left);
  const high = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
  return wide > overlapPx && high > overlapPx;
}

/** Whether a line passes through a box, by cutting the line at each side (Liang, Barsky 1984, ACM Trans Graph 3:1-22). */
function strikes({ from, to }: Stroke, box: Box): boolean {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const sides: readonly (readonly [number, number])[] = [
    [-dx, from.x - box.left - overlapPx],
    [dx, box.right - overlapPx - from.x],
    [-dy, from.y - box.top - overlapPx],
    [dy, box.bottom - overlapPx - from.y],
  ];
  let [enter, leave] = [0, 1];
  for (const [step, room] of sides) {
    if (step === 0 && room < 0) return false;
    if (step < 0) enter = Math.max(enter, room / step);
    if (step > 0) leave = Math.min(leave, room / step);
  }
  return enter < leave;
}

/** Inks alone don't part series: past the five, a reader is left to guess. */
function tooManySeries({ marks }: Scene): SceneWarning[] {
  const inks = new Set(marks.map(({ ink }) => ink as string).filter((ink) => ink.startsWith("series")));
  return inks.size > 5 ? [{ code: "too-many-series", what: `${inks.size} series` }] : [];
}

function nameOf(mark: SingleMark): string {
  if (mark.mark === "text") return said(mark);
  return `${mark.mark}${mark.label === undefined ? "" : ` ${mark.label}`}`;
}

const said = ({ text }: TextMark) => `text ${text}`;
