import { type FigureOptions, isWide, requireWidth, usualWidthPx } from "../figure/figure";
import { nothingScene } from "../figure/nothing";
import { titleOf } from "../figure/title";
import { layHead } from "../head/lay-head";
import { type KeyEntry, layKey } from "../key/lay-key";
import { textWidth, wrapText } from "../place/text-width";
import { countsText, totalText } from "../say/excluded";
import { counted, grouped, listed } from "../say/numbers";
import { shownUnit } from "../say/shown-unit";
import type { Mark, Scene } from "../scene";
import { numberMark, pieceMarks } from "./bar";
import { closedIn, type FollowUpGroup, type FollowUpRecord, type FollowUpWindowCounts, fates, fateWords, requireSums } from "./record";

export const done = "followed";
const barPx = 20;
const size = { window: 13.5, words: 12.5 } as const;
/** Between pieces of a bar. */
const gapPx = 2;

/**
 * Follow-up by window, a bar as long as the group a window: seen, due and not seen, lost, dead, not yet due, each on a ground of its own,
 * and all five in words.
 * @throws RangeError when the width is below 240 px, a unit is asked for, or a window does not add up to its group
 */
export function layoutFollowUp(record: FollowUpRecord, { width = usualWidthPx, unit }: FigureOptions = {}): Scene {
  requireWidth("layoutFollowUp", width);
  shownUnit("", unit);
  requireSums(record);
  const title = titleOf(record, "Follow-up: who was seen, and who not");
  if (record.groups.length === 0) return nothingScene({ width, title });
  const entries = keyOf(record);
  const key = entries.length === 0 ? { marks: [], height: -12 } : layKey(entries, { width, y: 0 });
  const marks: Mark[] = [...key.marks];
  let cursor = key.height + 12;
  for (const group of record.groups) {
    const block = layGroup(record, group, width, cursor);
    marks.push(...block.marks);
    cursor = block.end + 22;
  }
  return { width, title, description: describe(record), height: Math.ceil(cursor - 20), marks };
}

function layGroup(record: FollowUpRecord, group: FollowUpGroup, width: number, y: number) {
  const head = layHead({ name: group.label, counts: [countsText(group, record.of, done)] }, { x: 0, y, width });
  const marks: Mark[] = [...head.marks];
  let cursor = y + head.height + 6;
  if (group.n === 0) return { marks, end: cursor };
  const name = record.groups.length > 1 ? group.label : null;
  const labelWidth = isWide(width) ? Math.max(90, ...group.windows.map(({ label }) => textWidth(label, size.window) + 16)) : 0;
  for (const window of group.windows) {
    const placed = layWindow(window, group.n, { width, labelWidth, name, y: cursor });
    marks.push(...placed.marks);
    cursor = placed.end;
  }
  return { marks, end: cursor };
}

type Place = { readonly width: number; readonly labelWidth: number; readonly name: string | null; readonly y: number };

/** A window: its name, its bar, and the five numbers in words; on a phone one under the other. */
function layWindow(window: FollowUpWindowCounts, n: number, { width, labelWidth, name, y }: Place) {
  const beside = labelWidth > 0;
  const top = beside ? y : y + 20;
  const label: Mark = { mark: "text", x: 0, y: y + 14.5, text: window.label, ink: "ink", size: size.window };
  const pieces = layBar(window, n, { x: labelWidth, y: top, width: width - labelWidth - 2, name });
  const words = wrapText(wordsOf(window), size.words, width - labelWidth).map(
    (text, line): Mark => ({ mark: "text", x: labelWidth, y: top + barPx + 16 + line * 16, text, ink: "muted", size: size.words }),
  );
  return { marks: [label, ...pieces, ...words], end: top + barPx + 16 + words.length * 16 };
}

type BarPlace = { readonly x: number; readonly y: number; readonly width: number; readonly name: string | null };

function layBar(window: FollowUpWindowCounts, n: number, { x: left, y, width, name }: BarPlace): Mark[] {
  const held = fates.filter((fate) => window[fate] > 0);
  const room = width - gapPx * (held.length - 1);
  const marks: Mark[] = [];
  let x = left + 1;
  for (const fate of held) {
    const piece = { x, y, width: (window[fate] / n) * room, height: barPx };
    const label = `${name === null ? "" : `${name}, `}${window.label}: ${grouped(window[fate])} of ${grouped(n)} ${fateWords[fate]}`;
    marks.push(...pieceMarks(fate, piece, label), ...numberMark(window[fate], fate, piece));
    x += piece.width + gapPx;
  }
  return marks;
}

/** `82 seen of 96 seen, due or lost; 9 due, not seen; 5 lost; 1 dead; 20 not yet due`. */
export function wordsOf(window: FollowUpWindowCounts): string {
  const rest = fates.slice(1).flatMap((fate) => (window[fate] === 0 ? [] : [`${grouped(window[fate])} ${fateWords[fate]}`]));
  const closed = closedIn(window);
  return [closed === 0 ? "none seen, due or lost" : `${grouped(window.seen)} seen of ${grouped(closed)} seen, due or lost`, ...rest].join(
    "; ",
  );
}

function keyOf({ groups }: FollowUpRecord): KeyEntry[] {
  const windows = groups.flatMap((group) => (group.n === 0 ? [] : group.windows));
  return fates
    .filter((fate) => windows.some((window) => window[fate] > 0))
    .map((fate) => ({
      text: fateWords[fate],
      wide: 22,
      draw: (x, y) => pieceMarks(fate, { x, y: y - 6, width: 22, height: 12 }),
    }));
}

function describe(record: FollowUpRecord): string {
  const groups = record.groups.map((group) => {
    const windows = group.n === 0 ? [] : group.windows.map((window) => `at ${window.label} ${wordsOf(window)}`);
    return `${group.label}: ${[countsText(group, record.of, done), ...windows].join("; ")}.`;
  });
  const clock = record.clock ?? "from surgery";
  const windows = record.groups[0]?.windows ?? [];
  const which = `${counted(windows.length, "window")} ${clock}: ${listed(windows.map(({ label }) => label))}`;
  return `A bar a window, parted by who was seen. ${which}. ${totalText(record.groups, record.of, done)}. ${groups.join(" ")}`;
}
