import type { SegmentRow } from "@/lib/codebook";
import { compareIndex } from "../check/typed-index";
import { headerParts } from "../match/header-unit";
import { markFrom, noMarkEvidence, weighMark } from "../values/decimal-mark";
import type { DecimalMark } from "../values/number";
import { readNumber } from "../values/number";
import type { PreparedColumns } from "./prepare-columns";
import { partIn, type StrippedDraft, say } from "./stripped-draft";

type IndexColumn = { readonly index: number; readonly header: string; readonly mark: DecimalMark } & Pick<
  ReturnType<typeof headerParts>,
  "words" | "unit"
>;

/** Columns of an index typed by the unit; never stored, compared with what days and gain give. */
export function indexColumnsOf({ sheet, match }: PreparedColumns): readonly IndexColumn[] {
  return match.columns
    .filter(({ dropped }) => dropped === "typed-index")
    .map(({ index, header }) => {
      const evidence = noMarkEvidence();
      for (const row of sheet.rows) weighMark(row[index] ?? "", evidence, (value) => value < 1000);
      return { index, header, mark: markFrom(evidence) === "," ? "," : ".", ...headerParts(sheet.headerCells[index] ?? "") };
    });
}

/** Says where a typed index is not the one that the row gives, and which clock it fits. */
export function checkIndices(stripped: StrippedDraft, cells: readonly string[], columns: readonly IndexColumn[]): void {
  const segment = partIn(stripped, "segment");
  if (!segment) return;
  for (const { index, header, mark, words, unit } of columns) {
    const read = readNumber(cells[index] ?? "", mark);
    if (!read) continue;
    const compared = compareIndex(segment as SegmentRow, { ...read, unit, words });
    if (!compared || compared.agrees) continue;
    const fits = compared.fits.join(", ");
    const found = fits === "" ? "an index that no clock of the row gives" : "an index of another clock";
    say(stripped, { code: "index-disagrees", column: header, field: null, found, about: { fits } });
  }
}
