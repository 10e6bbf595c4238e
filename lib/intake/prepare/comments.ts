import type { Sheet } from "../types";
import type { CodedRow } from "./coded-events";
import type { PreparedColumns } from "./prepare-columns";
import type { Comment } from "./prepared";

/** Comments of the files, to be coded where the file is and then dropped with their columns. */
export function commentsOf(columns: readonly PreparedColumns[], coded: readonly CodedRow[] = []): readonly Comment[] {
  const done = new Set(coded.map(({ file, row }) => `${row}\u001f${file}`));
  return columns.flatMap(({ sheet, match }) =>
    match.columns.filter(({ dropped }) => dropped === "comments").flatMap(({ index, header }) => commentsIn(sheet, index, header, done)),
  );
}

function commentsIn({ file, rows, rowNumbers }: Sheet, index: number, header: string, done: ReadonlySet<string>): Comment[] {
  return rows.flatMap((cells, i) => {
    const text = cells[index] ?? "";
    const row = rowNumbers[i] as number;
    return text === "" ? [] : [{ file, row, header, text, coded: done.has(`${row}\u001f${file}`) }];
  });
}
