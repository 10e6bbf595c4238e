import type { CasebookAnswer, CasebookColumn, CasebookRow } from "@/lib/answers";
import { addressOf, type BookAsked } from "../_question";
import { digitsNeeded, valueText } from "../_words";

type Props = { readonly asked: BookAsked; readonly answer: CasebookAnswer };

/** The rows of the window, a segment a row; it scrolls inside itself, the case staying. */
export function BookTable({ asked, answer }: Props) {
  const columns = answer.columns.map((column) => ({ ...column, digits: digitsOf(column, answer.rows) }));
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
        <tbody>{answer.rows.map((row) => bookRow(row, columns, asked.asOf))}</tbody>
      </table>
    </section>
  );
}

type Column = CasebookColumn & { readonly digits: number };

/** So many digits for a whole column that its points stand under one another; an index is told to one. */
function digitsOf({ id, unit }: CasebookColumn, rows: readonly CasebookRow[]): number {
  const most = unit === "days/cm" ? 1 : 2;
  const needed = rows.map(({ values: { [id]: value } }) => (typeof value === "number" ? digitsNeeded(value) : 0));
  return Math.min(most, Math.max(0, ...needed));
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

function bookRow({ case: number, segment, values }: CasebookRow, columns: readonly Column[], asOf: number | null) {
  return (
    <tr key={segment}>
      <th scope="row" className="start">
        <a href={asOf === null ? `/casebook/${number}` : `/casebook/${number}?asOf=${asOf}`}>{number}</a>
        <span className="whose" data-whose={number} />
      </th>
      {columns.map((column) => (
        <td key={column.id} className={isNumber(column) ? undefined : "start"}>
          {valueText(column, values[column.id] ?? null, column.digits)}
        </td>
      ))}
    </tr>
  );
}
