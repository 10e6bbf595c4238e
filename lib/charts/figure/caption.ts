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
  readonly notes?: readonly NoteForFigure[];
};

/** The caption that goes with a figure wherever it goes: cohort, n, definition, interval, notes, data, batch and reference. */
export function captionFrom(source: FigureSource, parts: CaptionParts, { cohort = "all segments", unit = "" }: CaptionOptions): string {
  const sentences = [
    `${titleOf(source, parts.what)}; cohort: ${cohort}`,
    parts.counts,
    `Definition: ${source.definition.sentence}`,
    ...parts.reading,
    unit.startsWith("months") ? `1 month is ${daysPerMonth} days` : null,
    ...noteTexts([...(source.notes ?? []), ...(parts.notes ?? [])]),
    `Data to ${source.dataTo ?? "no quarter"}, batch ${source.batch}`,
    `Result reference ${source.stamp}`,
  ];
  return `${sentences.filter((sentence) => sentence !== null && sentence !== "").join(". ")}.`;
}

/** Each note once, as a sentence without its full stop. */
function noteTexts(notes: readonly NoteForFigure[]): string[] {
  const texts = notes.map(({ text }) => text.trim().replace(/\.$/, ""));
  return [...new Set(texts)].map((text) => `${text.charAt(0).toUpperCase()}${text.slice(1)}`);
}
