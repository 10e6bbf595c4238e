import type { Sheet } from "../types";
import type { Sample } from "./prepared";
import type { StrippedSheet } from "./strip-drafts";
import type { StrippedDraft } from "./stripped-draft";

const sampleCount = 3;

/** The first rows that stand, as typed and as they would be sent. */
export function samplesOfSheets(sheets: readonly StrippedSheet[], stands: (draft: StrippedDraft) => boolean): readonly Sample[] {
  return sheets.flatMap(({ sheet, stripped }) =>
    stripped
      .filter(stands)
      .slice(0, sampleCount)
      .map((draft) => sampleOf(sheet, draft)),
  );
}

function sampleOf(sheet: Sheet, { draft, parts }: StrippedDraft): Sample {
  const cells = sheet.rows[draft.index] ?? [];
  const before = sheet.headers.map((header, i) => ({ header, cell: cells[i] ?? "" }));
  const after = parts.map(({ table, row }) => ({
    table,
    values: Object.fromEntries(Object.entries(row).filter((entry): entry is [string, string | number | boolean] => entry[1] !== null)),
  }));
  return { file: draft.file, row: draft.row, before, after };
}
