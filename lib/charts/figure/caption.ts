import { crowdText } from "../draw/crowd";
import { daysPerMonth } from "../say/units";
import type { CaptionOptions } from "./figure";
import type { FigureSource, NoteForFigure } from "./source";
import { titleOf } from "./title";

/** What a figure adds to the caption that all figures share. Sentences without their full stop; `null` where there is nothing to say. */
export type CaptionParts = {
  readonly what?: string;
  /** How many: always said. */
  readonly counts: string;
  /** What the marks and brackets mean. */
  readonly reading: readonly (string | null)[];
  /** Whose notes are said with their names, unless all groups bear them. */
  readonly groups?: readonly Noted[];
};

type Noted = { readonly label: string; readonly notes?: readonly NoteForFigure[] };

/** The caption that goes with a figure wherever it goes: cohort, n, definition, interval, notes, data, batch and reference. */
export function captionFrom(
  source: FigureSource,
  parts: CaptionParts,
  { cohort = "all segments", unit = "", crowded = false }: CaptionOptions,
): string {
  const sentences = [
    `${titleOf(source, parts.what)}; cohort: ${cohort}`,
    parts.counts,
    `Definition: ${source.definition.sentence}`,
    ...parts.reading,
    crowded ? crowdText : null,
    unit.startsWith("months") ? `1 month is ${daysPerMonth} days` : null,
    ...new Set([...(source.notes ?? []).map(sentenceOf), ...groupNotes(parts.groups ?? [])]),
    `Data to ${source.dataTo ?? "no quarter"}, batch ${source.batch}`,
    `Result reference ${source.stamp}`,
  ];
  return `${sentences.filter((sentence) => sentence !== null && sentence !== "").join(". ")}.`;
}

/** A note as a sentence without its full stop. */
function sentenceOf({ text }: NoteForFigure): string {
  const plain = text.trim().replace(/\.$/, "");
  return `${plain.charAt(0).toUpperCase()}${plain.slice(1)}`;
}

/** Each note once, after the names of the groups that bear it. How an interval was clustered is said of all, not of each. */
function groupNotes(groups: readonly Noted[]): string[] {
  const bearers = new Map<string, string[]>();
  for (const { label, notes = [] } of groups)
    for (const note of notes.filter(({ code }) => code !== "clustered"))
      bearers.set(sentenceOf(note), [...(bearers.get(sentenceOf(note)) ?? []), label]);
  return [...bearers].map(([text, labels]) => (labels.length === groups.length ? text : `${labels.join(", ")}: ${text}`));
}
