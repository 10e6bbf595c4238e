import { shapeEntry } from "../key/entries";
import type { KeyEntry } from "../key/lay-key";
import type { Mark, Shape } from "../scene";
import type { MomentForFigure } from "./record";
import { dayText } from "./words";

type Look = { readonly shape: Shape; readonly hollow?: true; readonly ink: "warm" | "ink" | "muted"; readonly words: string };

const looks: Readonly<Record<MomentForFigure["kind"], Look>> = {
  event: { shape: "diamond", ink: "warm", words: "event" },
  planned: { shape: "diamond", ink: "ink", hollow: true, words: "planned operation" },
  bearing: { shape: "triangle", ink: "ink", words: "full weight bearing" },
  removal: { shape: "square", ink: "ink", words: "frame or implant out" },
  seen: { shape: "cross", ink: "muted", words: "last seen" },
};
const size = 4.6;
const rowPx = 15;

/** The moments of a treatment on as many rows as keep their marks apart. */
export function momentMarks(
  moments: readonly MomentForFigure[],
  at: (day: number) => number,
  y: number,
): { marks: Mark[]; height: number } {
  const ends: number[] = [];
  const marks = [...moments]
    .sort((a, b) => a.day - b.day)
    .map((moment): Mark => {
      const x = at(moment.day);
      const free = ends.findIndex((end) => end + 2 <= x - size);
      const row = free < 0 ? ends.length : free;
      ends[row] = x + size;
      const { shape, ink, hollow } = looks[moment.kind];
      const label = `${dayText(moment.day)}: ${moment.text}`;
      return { mark: "symbol", shape, x, y: y + row * rowPx + rowPx / 2, size, ink, label, ...(hollow ? { hollow } : {}) };
    });
  return { marks, height: ends.length * rowPx };
}

/** Key entries of the kinds that occur. */
export function momentEntries(moments: readonly MomentForFigure[]): readonly KeyEntry[] {
  const kinds = new Set(moments.map(({ kind }) => kind));
  return Object.entries(looks).flatMap(([kind, { words, ...look }]) =>
    kinds.has(kind as MomentForFigure["kind"]) ? [shapeEntry(words, look)] : [],
  );
}
