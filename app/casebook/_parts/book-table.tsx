import type { CasebookAnswer, CasebookColumn, CasebookRow } from "@/lib/answers";
import { addressOf, type BookAsked } from "../_question";
import { valueText } from "../_words";

type Props = { readonly asked: BookAsked; readonly answer: CasebookAnswer };

/** The rows of the window, a segment a row; it scrolls inside itself, the case staying. */
export function BookTable({ asked, answer }: Props) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard to be scrolled
    <section className="scrolls book" tabIndex={0} aria-label="Segments held">
      <table className="data">
        <caption className="only-heard">Segments held, a row each; days are days from that segment’s surgery</caption>
        <thead>
          <tr>
            {headCell(asked, { id: "case", label: "Case", unit: null, isNumber: false })}
            {answer.columns.map((column) => headCell(asked, { ...column, isNumber: isNumber(column) }))}
          </tr>
        </thead>
        <tbody>{answer.rows.map((row) => bookRow(row, answer.columns, asked.asOf))}</tbody>
      </table>
    </section>
  );
}

const isNumber = ({ kind }: CasebookColumn) => kind === "number" || kind === "days";

type Head = { readonly id: string; readonly label: string; readonly unit: string | null; readonly isNumber: boolean };

function headCell(asked: BookAsked, { id, label, unit, isNumber: right }: Head) {
  const sorted = asked.sort === id;
  const descending = sorted && !asked.descending;
  return (
    <th
      key={id}
      scope="col"
      className={right ? undefined : "start"}
      aria-sort={sorted ? (asked.descending ? "descending" : "ascending") : undefined}
    >
      <a href={addressOf({ ...asked, sort: id, descending, from: 1 })}>{label}</a>
      {sorted ? <span aria-hidden="true">{asked.descending ? " ↓" : " ↑"}</span> : null}
      {unit === null ? null : <span className="under">{unit}</span>}
    </th>
  );
}

function bookRow({ case: number, segment, values }: CasebookRow, columns: readonly CasebookColumn[], asOf: number | null) {
  return (
    <tr key={segment}>
      <th scope="row" className="start">
        <a href={asOf === null ? `/casebook/${number}` : `/casebook/${number}?asOf=${asOf}`}>{number}</a>
        <span className="whose" data-whose={number} />
      </th>
      {columns.map((column) => (
        <td key={column.id} className={isNumber(column) ? undefined : "start"}>
          {valueText(column, values[column.id] ?? null)}
        </td>
      ))}
    </tr>
  );
}
