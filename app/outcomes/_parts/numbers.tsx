import type { DataTable, TableColumn } from "@/lib/charts";

type Props = { readonly table: DataTable; readonly caption: string };

/** A table of numbers; an interval stands under its estimate, smaller. */
export function Numbers({ table, caption }: Props) {
  const shown = table.columns.filter((column) => column.under === undefined);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard to be scrolled
    <section className="scrolls" tabIndex={0} aria-label={caption}>
      <table className="data">
        <caption className="only-heard">{caption}</caption>
        <thead>
          <tr>{shown.map((column) => headCell(column, intervalOf(table, column)))}</tr>
        </thead>
        <tbody>{table.rows.map((row) => numbersRow(row, table, shown))}</tbody>
      </table>
    </section>
  );
}

const mostBrief = 12;

function intervalOf(table: DataTable, column: TableColumn): TableColumn | undefined {
  return table.columns.find((other) => other.under === column.id);
}

function headCell({ id, align, head, unit }: TableColumn, interval: TableColumn | undefined) {
  return (
    <th key={id} scope="col" className={head.length > mostBrief ? align : `${align} brief`}>
      {head}
      {interval === undefined ? null : <span className="under">{interval.head}</span>}
      {unit === undefined ? null : <span className="under">{unit}</span>}
    </th>
  );
}

function numbersRow(row: readonly string[], table: DataTable, shown: readonly TableColumn[]) {
  const cell = (column: TableColumn | undefined) => (column === undefined ? undefined : row[table.columns.indexOf(column)]);
  const [first, ...rest] = shown;
  return (
    <tr key={row.join("|")}>
      <th scope="row" className="start">
        {cell(first)}
      </th>
      {rest.map((column) => {
        const interval = cell(intervalOf(table, column));
        return (
          <td key={column.id} className={column.align}>
            {cell(column)}
            {interval === undefined || interval === "–" ? null : <span className="under">{interval}</span>}
          </td>
        );
      })}
    </tr>
  );
}
