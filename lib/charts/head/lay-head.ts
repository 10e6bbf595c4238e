import { textWidth, wrapText } from "../place/text-width";
import type { Mark } from "../scene";

const sizes = { name: 15, estimate: 13.5, counts: 12.5 } as const;
const linePx = 18;
/** Bold letters are about so much wider than the guess. */
const boldness = 1.06;
const swatchPx = 34;

export type Head = {
  readonly name: string;
  /** The leading number: on the line of the name where there is room, below it where not. */
  readonly estimate?: string;
  /** Further numbers, a line each, in ink. */
  readonly lines?: readonly string[];
  /** Counts and what is left out, muted. */
  readonly counts?: readonly string[];
  /** How the group is drawn, before its name: within 28 px from x, about the middle y. */
  readonly swatch?: (x: number, y: number) => readonly Mark[];
};
export type Placed = { readonly marks: readonly Mark[]; readonly height: number };

/** What stands over a group: how it is drawn, its name, its estimate, and its counts; wrapped where there is no room. */
export function layHead(head: Head, { x, y, width }: { readonly x: number; readonly y: number; readonly width: number }): Placed {
  const indent = head.swatch === undefined ? 0 : swatchPx;
  const { estimate } = head;
  const needs = indent + textWidth(head.name, sizes.name) * boldness + 24 + textWidth(estimate ?? "", sizes.estimate);
  const shares = estimate !== undefined && needs <= width;
  const lines = linesOf(head, { width, indent, below: estimate !== undefined && !shares });
  const marks: Mark[] = lines.map(({ indent: own, ...line }, index) => ({ mark: "text", x: x + own, y: y + index * linePx + 14, ...line }));
  if (shares) marks.push({ mark: "text", x: x + width, y: y + 14, text: estimate, ink: "ink", size: sizes.estimate, anchor: "end" });
  return { marks: [...(head.swatch?.(x, y + 9) ?? []), ...marks], height: lines.length * linePx };
}

type Room = { readonly width: number; readonly indent: number; readonly below: boolean };

function linesOf({ name, estimate, lines = [], counts = [] }: Head, { width, indent, below }: Room) {
  const inInk = [...(below && estimate !== undefined ? [estimate] : []), ...lines];
  return [
    ...wrapText(name, sizes.name * boldness, width - indent).map(
      (text) => ({ text, size: sizes.name, ink: "ink", weight: "bold", indent }) as const,
    ),
    ...inInk
      .flatMap((line) => wrapText(line, sizes.estimate, width))
      .map((text) => ({ text, size: sizes.estimate, ink: "ink", weight: "normal", indent: 0 }) as const),
    ...counts
      .flatMap((line) => wrapText(line, sizes.counts, width))
      .map((text) => ({ text, size: sizes.counts, ink: "muted", weight: "normal", indent: 0 }) as const),
  ];
}
