import { fileOnlyFields } from "@/lib/codebook";
import type { Comment, Prepared, Sheet } from "@/lib/intake";
import type { CommentShown } from "../_talk/view";

/** A comment beside what else its row says, names left out: they are no help to code it. */
export function commentShown(
  { comments, sheets, matches }: Pick<Prepared, "comments" | "sheets" | "matches">,
  index: number,
): CommentShown {
  const comment = comments[index];
  const sheet = sheets.find(({ file }) => file === comment?.file);
  const match = matches.find(({ file }) => file === comment?.file)?.match;
  if (!comment || !sheet || !match) throw new RangeError(`commentShown requires a comment of ${comments.length}, received ${index}`);
  const cells = cellsOf(sheet, comment.row);
  const facts = match.columns.flatMap(({ target, header, index: column }) => {
    const cell = (cells[column] ?? "").trim();
    return !target || cell === "" || target.field in fileOnlyFields ? [] : [{ header, cell }];
  });
  const { file, row, header, text } = comment;
  return { index, file, row, header, text, facts, alike: alikeOf(comments, index) };
}

function cellsOf({ rows, rowNumbers }: Sheet, row: number): readonly string[] {
  return rows[rowNumbers.indexOf(row)] ?? [];
}

function alikeOf(comments: readonly Comment[], index: number): readonly number[] {
  const words = plain(comments[index]?.text ?? "");
  return comments.flatMap(({ text }, i) => (i !== index && plain(text) === words ? [i] : []));
}

function plain(text: string): string {
  return text
    .normalize("NFKC")
    .toLowerCase()
    .replace(/[\s.,;]+/g, " ")
    .trim();
}
