import { apart, type Look, mostNamed, symbolAt } from "../place/symbols";
import type { Mark, PathMark, Scene, Shape, SingleMark, SymbolMark, SymbolsMark } from "../scene";
import { outlineOf } from "./shapes";

/** What description and caption say of a crowd, without a full stop. */
export const crowdText = "Where marks crowd they are drawn together, without their names";

/** Squares of so many px, in which at most so many stand alone. */
const square = 8;
const mostAlone = 2;
/** Numbers of places in a row: more than any drawing is wide. */
const stride = 2 ** 14;

/** Symbols of one look that are drawn together: their places, pixel by pixel. */
type Crowd = { readonly look: Look; readonly places: number[] };
type Drawn = Omit<Scene, "marks"> & { readonly marks: readonly SingleMark[] };

/**
 * A scene with more named symbols than can be told apart: where they crowd, those of one look are drawn together, one for each pixel,
 * without their names; those that stand alone keep theirs, and the description says so. Of any other scene each mark stands by itself.
 */
export function asCrowd(scene: Scene): Drawn {
  const named = scene.marks.filter(isNamed);
  if (named.reduce((sum, mark) => sum + countOf(mark), 0) <= mostNamed) return { ...scene, marks: scene.marks.flatMap(apart) };
  const isAlone = aloneIn(scene, named);
  const marks: (SingleMark | Crowd)[] = [];
  const crowds: Crowd[] = [];
  const crowdOf = (look: Look): Crowd => {
    const held = crowds.find((crowd) => isAlike(crowd.look, look));
    if (held) return held;
    // a crowd stands where its first mark stood
    const crowd = { look, places: [] };
    crowds.push(crowd);
    marks.push(crowd);
    return crowd;
  };
  const take = (look: Look, x: number, y: number, single: () => SingleMark) => {
    if (isAlone(x, y)) marks.push(single());
    else crowdOf(look).places.push(placeOf(x, y));
  };
  for (const mark of scene.marks) {
    if (!isNamed(mark)) marks.push(mark);
    else if (mark.mark === "symbol") take(mark, mark.x, mark.y, () => mark);
    else for (let at = 0; at < mark.xs.length; at++) take(mark, mark.xs[at] as number, mark.ys[at] as number, () => symbolAt(mark, at));
  }
  const drawn = marks.map((one) => ("places" in one ? together(one) : one));
  return { ...scene, marks: drawn, description: `${scene.description} ${crowdText}.` };
}

type NamedMark = SymbolMark | SymbolsMark;

/** Whether it has a name, without reading it. */
function isNamed(mark: Mark): mark is NamedMark {
  return mark.mark === "symbols" || (mark.mark === "symbol" && "label" in mark);
}

function countOf(mark: NamedMark): number {
  return mark.mark === "symbols" ? mark.xs.length : 1;
}

/** Whether at most a few named symbols stand in the square of a place; what lies outside the drawing counts at its edge. */
function aloneIn({ width, height }: Scene, named: readonly NamedMark[]): (x: number, y: number) => boolean {
  const [across, down] = [Math.ceil(width / square) + 1, Math.ceil(height / square) + 1];
  const counts = new Uint32Array(across * down);
  const within = (at: number, end: number) => Math.min(Math.max(0, Math.round(at / square)), end - 1);
  const squareOf = (x: number, y: number) => within(y, down) * across + within(x, across);
  const count = (x: number, y: number) => {
    const at = squareOf(x, y);
    counts[at] = (counts[at] as number) + 1;
  };
  for (const mark of named) {
    if (mark.mark === "symbol") count(mark.x, mark.y);
    else for (let at = 0; at < mark.xs.length; at++) count(mark.xs[at] as number, mark.ys[at] as number);
  }
  return (x, y) => (counts[squareOf(x, y)] as number) <= mostAlone;
}

/** Whether a drawing is one of a crowd, by its own description. */
export function isCrowded(svg: string): boolean {
  return svg.includes(`${crowdText}.</desc>`);
}

/** A number for each pixel of the picture, rising row by row; none below 0. */
function placeOf(x: number, y: number): number {
  return Math.max(0, Math.round(y)) * stride + Math.max(0, Math.round(x));
}

const looks = ["shape", "ink", "size", "hollow", "opacity"] as const;

function isAlike(one: Look, other: Look): boolean {
  return looks.every((look) => one[look] === other[look]);
}

function together({ look: { shape, ink, size, hollow, opacity }, places: all }: Crowd): PathMark {
  const sorted = Int32Array.from(all).sort();
  const places = Array.from(sorted.filter((place, i) => place !== sorted[i - 1]));
  const dim = opacity === undefined ? {} : { opacity };
  if (compact.has(shape) && hollow !== true) {
    const side = Math.max(1, Math.round(size * Math.sqrt(Math.PI)));
    return { mark: "path", d: rowsOf(places, side), ink, weight: side, ...dim };
  }
  const outline = shape === "disc" ? "square" : shape;
  const d = places.map((place) => outlineOf(outline, place % stride, Math.floor(place / stride), size)).join("");
  return { mark: "path", d, ink, ...(shape === "cross" || hollow ? { weight: 1.5 } : { fill: true }), ...dim };
}

const compact: ReadonlySet<Shape> = new Set(["disc", "square", "diamond"]);

/**
 * So small, a compact shape is drawn as the square of its area, and squares of a row that meet as one stroke as wide as their side. Edges lie
 * between pixels: rows that lie on each other are then as dark as the ink.
 */
function rowsOf(places: readonly number[], side: number): string {
  let d = "";
  let first = 0;
  places.forEach((place, i) => {
    // the next row's places are further away than any side
    if ((places[i + 1] ?? Number.POSITIVE_INFINITY) - place <= side) return;
    const from = places[first] as number;
    d += `M${(from % stride) - Math.floor(side / 2)} ${Math.floor(from / stride) + (side % 2) / 2}h${place - from + side}`;
    first = i + 1;
  });
  return d;
}
