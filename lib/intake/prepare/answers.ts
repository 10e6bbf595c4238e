import type { Mapping } from "../types";
import type { RowAnswer } from "./options";

/** The answer to a question of a row: the row's own, else that for all rows; `null` while it is open. */
export type AnswerOf = (code: string, row: { readonly file: string; readonly row: number }) => string | null;

export function answersFrom(mappingOf: (file: string) => Mapping, rowAnswers: readonly RowAnswer[] = []): AnswerOf {
  const own = new Map(rowAnswers.map(({ file, row, code, answer }) => [`${code}\u001f${row}\u001f${file}`, answer]));
  return (code, { file, row }) => own.get(`${code}\u001f${row}\u001f${file}`) ?? mappingOf(file).answers[code] ?? null;
}
