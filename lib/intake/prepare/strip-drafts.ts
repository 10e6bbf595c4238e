import { dayNumberOf } from "../strip";
import type { Draft } from "./draft";
import type { Keyed } from "./keyed-drafts";
import type { PrepareOptions } from "./options";
import { eachRow } from "./pace";
import type { DraftedSheet } from "./read-drafts";
import { segmentIndex } from "./segment-index";
import { namesSurgeries, stripOneSheet } from "./strip-one-sheet";
import { stripTableRow } from "./strip-table-row";
import { partIn, type StrippedDraft } from "./stripped-draft";

export type StrippedSheet = DraftedSheet & { readonly stripped: readonly StrippedDraft[] };

/** Strips every draft: rows of segments first, so that visits and events of other sheets find theirs. */
export async function stripDrafts(
  sheets: readonly DraftedSheet[],
  keyedOf: (draft: Draft) => Keyed | null,
  options: PrepareOptions,
): Promise<StrippedSheet[]> {
  const index = segmentIndex(options.held ?? null, options.joins);
  const of = sheets.reduce((sum, { drafts }) => sum + drafts.length, 0);
  let before = 0;
  const made = new Map<DraftedSheet, StrippedDraft[]>();
  const ordered = [...sheets].sort((a, b) => order(a) - order(b));
  for (const sheet of ordered) {
    const { kind } = sheet.match;
    const traits = traitsOf(sheet);
    const strip = {
      auditYearStartsIn: options.auditYearStartsIn ?? 1,
      yearOnly: options.yearOnly ?? false,
      todayNumber: dayNumberOf(options.today),
    };
    const stripped: StrippedDraft[] = [];
    await eachRow(
      sheet.drafts,
      (draft) => {
        const keyed = keyedOf(draft);
        const row =
          kind === "one-sheet" ? stripOneSheet(draft, keyed, strip, { ...traits, index }) : stripTableRow(draft, keyed, kind, index);
        stripped.push(row);
        const segment = partIn(row, "segment");
        if (segment) index.add(segment);
        if (row.keyed && row.line) index.addPerson(row.keyed.person, row.line);
      },
      { signal: options.signal, onChunk: (done) => options.onProgress?.({ step: "strip", done: before + done, of }) },
    );
    before += sheet.drafts.length;
    made.set(sheet, stripped);
  }
  return sheets.map((sheet) => ({ ...sheet, stripped: made.get(sheet) ?? [] }));
}

function order(sheet: DraftedSheet): number {
  const { kind } = sheet.match;
  if (kind === "one-sheet") return namesSurgeries(traitsOf(sheet)) ? 0 : 1;
  return kind === "persons" ? 3 : 2;
}

function traitsOf({ plan }: DraftedSheet) {
  const fills = (field: string) => plan.columns.some(({ target }) => target.field === field);
  return {
    hasSurgeryDates: fills("surgeryDay"),
    hasSurgeryYears: fills("surgeryYear"),
    hasEventsLookedFor: fills("eventsLookedFor"),
    hasDurations: plan.columns.some(({ reading }) => reading.as === "duration"),
  };
}
