import { type DataTable, noValue, type TableColumn } from "./data-table";

/**
 * What a figure shows as CSV (RFC 4180, UTF-8, lines end in CRLF): numbers bare with a plain minus and their thousands together, a span as two columns, blanks where
 * there is no value, units in the heads. A text that a spreadsheet would take for a formula gets an apostrophe before it.
 * @example figureCsv({ columns: [{ id: "mean", head: "Mean", unit: "mm", align: "end" }], rows: [["−2.1"]] }) // => "Mean (mm)\r\n-2.1\r\n"
 */
export function figureCsv({ columns, rows: written }: DataTable): string {
  const rows = written.map((row) => row.map(together));
  const parts = columns.map((column, at) => {
    const head = headOf(
      column,
      columns.find(({ id }) => id === column.under),
    );
    return isSpan(rows.map((row) => row[at] ?? noValue)) ? spanPart(head) : plainPart(head);
  });
  const lines = [parts.flatMap((part) => part.heads), ...rows.map((row) => parts.flatMap((part, at) => part.cells(row[at] ?? noValue)))];
  return lines.map((cells) => `${cells.map(quoted).join(",")}\r\n`).join("");
}

type Part = { readonly heads: readonly string[]; readonly cells: (cell: string) => readonly string[] };

const number = /^−?\d+(?:\.\d+)?$/;
const span = /^(−?\d+(?:\.\d+)?|–|not reached) to (−?\d+(?:\.\d+)?|–|not reached)$/;

function isSpan(cells: readonly string[]): boolean {
  return cells.some((cell) => span.test(cell)) && cells.every((cell) => cell === noValue || span.test(cell));
}

function plainPart(head: string): Part {
  return { heads: [head], cells: (cell) => [bare(cell)] };
}

function spanPart(head: string): Part {
  return {
    heads: [`${head} from`, `${head} to`],
    cells: (cell) => {
      const [, low = noValue, high = noValue] = span.exec(cell) ?? [];
      return [bare(low), bare(high)];
    },
  };
}

/** Heads must tell columns apart where a page sets one under the other: an interval bears the name of its estimate. */
function headOf({ head, unit }: TableColumn, over: TableColumn | undefined): string {
  const name = over === undefined ? head : `${over.head} ${head}`;
  return unit === undefined ? name : `${name} (${unit})`;
}

/** A number or span without the blanks that set its thousands apart. */
function together(cell: string): string {
  const plain = cell.replace(/(?<=\d)\u202f(?=\d{3})/g, "");
  return number.test(plain) || span.test(plain) ? plain : cell;
}

function bare(cell: string): string {
  if (cell === noValue) return "";
  if (number.test(cell)) return cell.replace("−", "-");
  return /^[=+\-@\t\r]/.test(cell) ? `'${cell}` : cell;
}

function quoted(cell: string): string {
  return /[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}
