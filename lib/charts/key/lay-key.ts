import { textWidth } from "../place/text-width";
import type { Mark } from "../scene";

/** One thing that a reader must know: a small drawing, `wide` px, and its words. */
export type KeyEntry = { readonly text: string; readonly wide: number; readonly draw: (x: number, y: number) => readonly Mark[] };

const size = 12.5;
const linePx = 20;

/** The key: one line, or as many as the width asks for. */
export function layKey(
  entries: readonly KeyEntry[],
  { width, y, x: left = 0 }: { readonly width: number; readonly y: number; readonly x?: number },
): { marks: Mark[]; height: number } {
  const marks: Mark[] = [];
  let x = left + 1;
  let line = 0;
  for (const entry of entries) {
    const needs = entry.wide + 6 + textWidth(entry.text, size);
    if (x > left + 1 && x + needs > left + width) [x, line] = [left + 1, line + 1];
    const centre = y + line * linePx + linePx / 2;
    const text: Mark = { mark: "text", x: x + entry.wide + 6, y: centre + size * 0.34, text: entry.text, ink: "muted", size };
    marks.push(...entry.draw(x, centre), text);
    x += needs + 18;
  }
  return { marks, height: (line + 1) * linePx };
}
