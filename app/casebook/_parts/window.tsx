import type { CasebookAnswer } from "@/lib/answers";
import { grouped } from "@/lib/charts";
import { addressOf, type BookAsked, rowsShown } from "../_question";
import { Kept } from "./book-sentence";

type Props = { readonly asked: BookAsked; readonly answer: CasebookAnswer };

/** Which rows are shown, and the ways to the others. */
export function Window({ asked, answer: { segments, from, rows } }: Props) {
  if (segments <= rowsShown && from === 0) return null;
  const to = (row: number) => addressOf({ ...asked, from: row });
  const last = Math.floor((segments - 1) / rowsShown) * rowsShown + 1;
  return (
    <nav className="window sans" aria-label="Rows">
      <span className="number">
        Rows {grouped(from + 1)} to {grouped(from + rows.length)} of {grouped(segments)}
      </span>
      {from > 0 ? (
        <>
          <a href={to(1)}>First</a>
          <a href={to(Math.max(1, from + 1 - rowsShown))}>Earlier</a>
        </>
      ) : null}
      {from + rows.length < segments ? (
        <>
          <a href={to(from + 1 + rowsShown)}>Later</a>
          <a href={to(last)}>Last</a>
        </>
      ) : null}
      <form action="/casebook" method="get" className="not-printed">
        <label>
          From row <input name="from" type="number" min={1} max={segments} defaultValue={from + 1} autoComplete="off" />
        </label>{" "}
        <button type="submit">Go</button>
        <Kept asked={asked} but={["from"]} />
      </form>
    </nav>
  );
}
