import type { Mark, Scene, SymbolMark } from "../scene";
import { outlineOf } from "./shapes";

/** More names than these nobody walks through, and a page of them is slow to come. */
const mostNamed = 2000;
/** Squares of so many px, in which at most so many stand alone. */
const square = 8;
const mostAlone = 2;

/**
 * A scene with more named symbols than can be told apart: where they crowd, those of one look are drawn together, one for each pixel,
 * without their names; those that stand alone keep theirs, and the description says so. Any other scene is left as it is.
 */
export function asCrowd(scene: Scene): Scene {
  // the square of each mark that has a name; -1 of any other
  const squares = Float64Array.from(scene.marks, (mark) => (isNamed(mark) ? squareOf(mark) : -1));
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
  return { ...scene, marks: drawn, description: `${scene.description} Where marks crowd they are drawn without their names.` };
}

function isNamed(mark: Mark): mark is SymbolMark {
  return mark.mark === "symbol" && mark.label !== undefined;
}

/** A number for each square of the picture, none below 0. */
function squareOf({ x, y }: SymbolMark): number {
  return Math.max(0, Math.floor(x / square)) * 100_000 + Math.max(0, Math.floor(y / square));
}

const looks = ["shape", "ink", "size", "hollow", "opacity"] as const;

function isAlike(one: SymbolMark, other: SymbolMark): boolean {
  return looks.every((look) => one[look] === other[look]);
}

/** So small, a disc is drawn as the square of its area, in half the letters. */
function together(crowd: readonly SymbolMark[]): Mark {
  const [{ shape, ink, size, hollow, opacity }] = crowd as [SymbolMark];
  const spots = new Map(crowd.map(({ x, y }) => [Math.round(x) * 100_000 + Math.round(y), { x: Math.round(x), y: Math.round(y) }]));
  const side = Math.max(1, Math.round(10 * size * Math.sqrt(Math.PI)) / 10);
  const outline = ({ x, y }: { readonly x: number; readonly y: number }) =>
    shape === "disc" ? `M${x - side / 2} ${y - side / 2}h${side}v${side}h${-side}z` : outlineOf(shape, x, y, size);
  const d = [...spots.values()].map(outline).join("");
  const filled = shape !== "cross" && hollow !== true;
  return { mark: "path", d, ink, ...(filled ? { fill: true } : { weight: 1.5 }), ...(opacity === undefined ? {} : { opacity }) };
}
