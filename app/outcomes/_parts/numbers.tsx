import type { DataTable } from "@/lib/charts";

export function Numbers({ table, caption }: { readonly table: DataTable; readonly caption: string }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard to be scrolled
    <section className="scrolls" tabIndex={0} aria-label={caption}>
      <table className="data">
        <caption className="only-heard">{caption}</caption>
        <thead>
          <tr>
            {table.columns.map((column) => (
              <th key={column.id} scope="col" className={column.align}>
                {column.head}
                {column.unit === undefined ? null : <span className="unit">{column.unit}</span>}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>{table.rows.map((row) => numbersRow(row, table.columns))}</tbody>
      </table>
    </section>
  );
}

function numbersRow(row: readonly string[], columns: DataTable["columns"]) {
  const [head, ...cells] = row;
  return (
    <tr key={head}>
      <th scope="row" className="start">
        {head}
      </th>
      {cells.map((cell, index) => (
        <td key={columns[index + 1]?.id}>{cell}</td>
      ))}
    </tr>
  );
}
