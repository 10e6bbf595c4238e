import { cleanText } from "./clean";
import { type ColumnContext, headerAnnounces, hitsIn, scored } from "./detect-in-cell";
import { findKnown } from "./names/known-words";
import { looksLikeRecordNumbers } from "./record-numbers";
import { isShortNumber } from "./short-number";
import type { Hit, Suspicion, SuspicionKind } from "./suspicion";

/** What is known of a column that is judged by its different cells. Nothing of it is worked out before a cell is looked at. */
export type TalliedColumn = {
  /** Different cells that aren't blank, and how often each stands. */
  readonly tally: () => ReadonlyMap<string, number>;
  /** Words that the files show to be names or numbers of persons. */
  readonly known?: () => ReadonlySet<string>;
} & Pick<ColumnContext, "header" | "coded">;

export type ColumnSuspect = {
  /** Suspicions about one cell; a kind found in half of the column's filled cells counts two points more. */
  readonly cell: (text: string) => readonly Suspicion[];
  /** Whether nearly all of its cells differ and look like someone's numbers. */
  readonly recordNumbers: () => boolean;
  /** The header announces numbers of persons: even a short number may be one. */
  readonly announcesNumbers: boolean;
};

// a make or place that several rows share is no patient's name, though a patient may bear it
const rowsOfAMake = 5;

/**
 * A column's suspicions from its different cells.
 * @example suspectColumn({ tally: () => new Map([["Mr Zedson", 1]]) }).cell("Mr Zedson")[0]?.kind // => "name"
 */
export function suspectColumn({ tally, known = () => new Set<string>(), ...context }: TalliedColumn): ColumnSuspect {
  const header = headerAnnounces(context);
  const saysOfNumbers = header.number || header.date || header.postcode;
  const look = once((text) => {
    const hits = !saysOfNumbers && isShortNumber(text) ? [] : hitsIn(text, header, context);
    const isMake = (tally().get(text) ?? 0) >= rowsOfAMake;
    return [...hits, ...findKnown(cleanText(text), known()).map((hit) => (isMake ? { kind: hit.kind } : hit))];
  });
  let frequent: ReadonlySet<SuspicionKind> | null = null;
  const cell = (text: string) => {
    const hits = look(text);
    if (hits.length === 0) return [];
    frequent ??= kindsInHalf(tally(), look);
    const often = frequent;
    return scored(hits, ({ kind }) => often.has(kind));
  };
  return { cell, recordNumbers: () => looksLikeRecordNumbers(cellsOf(tally())), announcesNumbers: header.number };
}

function once(look: (text: string) => readonly Hit[]): (text: string) => readonly Hit[] {
  const known = new Map<string, readonly Hit[]>();
  return (text) => {
    const held = known.get(text);
    if (held) return held;
    const made = look(text);
    known.set(text, made);
    return made;
  };
}

/** Kinds found in at least half of the cells, of at least two; names by how many differ. */
function kindsInHalf(tally: ReadonlyMap<string, number>, look: (text: string) => readonly Hit[]): ReadonlySet<SuspicionKind> {
  const counts = new Map<SuspicionKind, number>();
  let filled = 0;
  for (const [text, times] of tally) {
    filled += times;
    for (const kind of new Set(look(text).map((hit) => hit.kind)))
      counts.set(kind, (counts.get(kind) ?? 0) + (kind === "name" ? 1 : times));
  }
  return new Set([...counts].filter(([, n]) => n >= 2 && n * 2 >= filled).map(([kind]) => kind));
}

function* cellsOf(tally: ReadonlyMap<string, number>): Iterable<string> {
  for (const [text, times] of tally) for (let n = 0; n < times; n++) yield text;
}
