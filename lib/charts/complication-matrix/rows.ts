import type { ShareForFigure } from "../figure/source";
import { wrapText } from "../place/text-width";
import { counted, grouped } from "../say/numbers";
import { percentText, shareText } from "../say/shown-estimate";
import type { Mark } from "../scene";
import { layBracket } from "../summary/lay-bracket";
import { type Grid, headSize } from "./grid";
import { type ComplicationRow, eventsIn } from "./record";

const size = 13;
const linePx = 17;
const cellPx = 26;
/** From the middle of a number down to its bar. */
const barPx = 7.5;

type Placed = { readonly marks: readonly Mark[]; readonly end: number };

/** Heads of the class columns and of the sum. */
export function headRow(grid: Grid, y: number): Placed {
  const deep = Math.max(1, ...grid.columns.map(({ lines }) => lines.length));
  const words = grid.columns.flatMap(({ x, lines }) =>
    lines.map((text, line): Mark => {
      const at = y + 12 + (deep - lines.length + line) * 15;
      return { mark: "text", x, y: at, text, ink: "muted", size: headSize, anchor: "middle" };
    }),
  );
  const sum: Mark = {
    mark: "text",
    x: grid.totalX,
    y: y + 12 + (deep - 1) * 15,
    text: "events",
    ink: "muted",
    size: headSize,
    anchor: "middle",
  };
  return { marks: [...words, sum], end: y + deep * 15 + 4 };
}

/** An origin over its types, on a hairline. */
export function originRow(origin: string, grid: Grid, y: number): Placed {
  const text: Mark = { mark: "text", x: 0, y: y + 20, text: origin, ink: "ink", size, weight: "bold" };
  const line: Mark = { mark: "rule", x1: 0, x2: grid.width, y1: y + 4, y2: y + 4, ink: "hairline", weight: 1 };
  return { marks: [line, text], end: y + 26 };
}

type Named = { readonly name: string | null; readonly classes: ReadonlyMap<string, string>; readonly noun: string };

/** One type: its name, its events by class, their sum, and the share that had it between its brackets. */
export function typeRow(row: ComplicationRow, grid: Grid, y: number, named: Named): Placed {
  const lines = wrapText(row.type, size, grid.labelWidth - (grid.wide ? 14 : 70));
  const label = lines.map(
    (text, line): Mark => ({ mark: "text", x: grid.wide ? 10 : 0, y: y + 16 + line * linePx, text, ink: "ink", size }),
  );
  const middle = grid.wide ? y + cellPx / 2 + ((lines.length - 1) * linePx) / 2 : y + lines.length * linePx + 4 + cellPx / 2;
  const cells = grid.columns.flatMap((column) => cellMarks(row, column, grid, middle, named));
  const total: Mark = { mark: "text", x: grid.totalX, y: middle + 4.4, text: grouped(eventsIn(row)), ink: "ink", size, anchor: "middle" };
  const shareY = grid.wide ? middle : middle + cellPx / 2 + 10;
  const share = shareMarks(row.share, grid, shareY, grid.wide ? middle : y + 12, said(named, row.type, named.noun));
  const end = grid.wide ? y + Math.max(cellPx, lines.length * linePx + 6) : shareY + 14;
  return { marks: [...label, ...cells, total, ...share], end };
}

function said({ name }: Named, type: string, noun: string): string {
  return `${name === null ? "" : `${name}: `}${type}, ${noun}`;
}

/** A number over a bar as long as it; nothing is a dot. */
function cellMarks(row: ComplicationRow, { id, x }: { id: string; x: number }, grid: Grid, y: number, named: Named): Mark[] {
  const n = row.counts[id] ?? 0;
  const text: Mark = {
    mark: "text",
    x,
    y: y + 4.4,
    text: n === 0 ? "·" : grouped(n),
    ink: n === 0 ? "muted" : "ink",
    size,
    anchor: "middle",
  };
  if (n === 0) return [text];
  const width = (n / grid.most) * (grid.columnWidth - 8);
  const label = `${named.name === null ? "" : `${named.name}: `}${row.type}, ${named.classes.get(id) ?? id}: ${counted(n, "event")}`;
  return [{ mark: "band", x: x - width / 2, y: y + barPx, width, height: 3.5, ink: "series1", label }, text];
}

/** A share between its brackets on the axis under the matrix, its percent beside it. */
export function shareMarks(share: ShareForFigure, grid: Grid, y: number, percentY: number, label: string): Mark[] {
  if (share.estimate === null || share.n === 0) return [];
  const text: Mark = {
    mark: "text",
    x: grid.width,
    y: percentY + 4.4,
    text: `${percentText(share.estimate)} %`,
    ink: "ink",
    size,
    anchor: "end",
  };
  return [
    ...layBracket(share, grid.axis.at, { y, size: 3.4, label: `${label}: ${shareText(share)}`, edges: [grid.left - 4, grid.right + 4] }),
    text,
  ];
}
