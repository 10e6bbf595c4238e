import type { Mark, Scene, Shape, SymbolMark } from "../scene";
import { outlineOf } from "./shapes";

/** What description and caption say of a crowd, without a full stop. */
export const crowdText = "Where marks crowd they are drawn together, without their names";

/** More names than these nobody walks through, and a page of them is slow to come. */
const mostNamed = 2000;
/** Squares of so many px, in which at most so many stand alone. */
const square = 8;
const mostAlone = 2;
/** Numbers of places in a row: more than any drawing is wide. */
const stride = 2 ** 14;

/**
 * A scene with more named symbols than can be told apart: where they crowd, those of one look are drawn together, one for each pixel,
 * without their names; those that stand alone keep theirs, and the description says so. Any other scene is left as it is.
 */
export function asCrowd(scene: Scene): Scene {
  // the square of each mark that has a name; -1 of any other
  const squares = new Int32Array(scene.marks.length).fill(-1);
  scene.marks.forEach((mark, i) => {
    if (isNamed(mark)) squares[i] = placeOf(mark, square);
  });
  const standing = new Map<number, number>();
  let named = 0;
  for (const at of squares) {
    if (at < 0) continue;
    named += 1;
    standing.set(at, (standing.get(at) ?? 0) + 1);
  }
  if (named <= mostNamed) return scene;
  const crowds: SymbolMark[][] = [];
  const marks: (Mark | SymbolMark[])[] = [];
  scene.marks.forEach((mark, i) => {
    const at = squares[i] as number;
    if (at < 0 || !isNamed(mark) || (standing.get(at) ?? 0) <= mostAlone) {
      marks.push(mark);
      return;
    }
    const held = crowds.find(([first]) => first !== undefined && isAlike(first, mark));
    if (held) held.push(mark);
    else {
      // a crowd stands where its first mark stood
      const crowd = [mark];
      crowds.push(crowd);
      marks.push(crowd);
    }
  });
  const drawn = marks.map((one) => (Array.isArray(one) ? together(one) : one));
  return { ...scene, marks: drawn, description: `${scene.description} ${crowdText}.` };
}

/** Whether a drawing is one of a crowd, by its own description. */
export function isCrowded(svg: string): boolean {
  return svg.includes(`${crowdText}.</desc>`);
}

/** Whether it has a name, without reading it. */
function isNamed(mark: Mark): mark is SymbolMark {
  return mark.mark === "symbol" && "label" in mark;
}

/** A number for each square of `px` of the picture, rising row by row; none below 0. */
function placeOf({ x, y }: SymbolMark, px: number): number {
  return Math.max(0, Math.round(y / px)) * stride + Math.max(0, Math.round(x / px));
}

const looks = ["shape", "ink", "size", "hollow", "opacity"] as const;

function isAlike(one: SymbolMark, other: SymbolMark): boolean {
  return looks.every((look) => one[look] === other[look]);
}

function together(crowd: readonly SymbolMark[]): Mark {
  const [{ shape, ink, size, hollow, opacity }] = crowd as [SymbolMark];
  const places = [...new Set(new Int32Array(crowd.map((mark) => placeOf(mark, 1))).sort())];
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
