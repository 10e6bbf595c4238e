import { readFileSync } from "node:fs";

const firstComplication: ReadonlySet<string> = new Set(["event_type_1", "onset_day_1", "handling_1"]);

/** Columns that a unit would keep in one sheet: those filled in every other row at least, and the first complication. */
function columnsKept(header: readonly string[], rows: readonly (readonly string[])[]): readonly number[] {
  const filled = (column: number) => rows.filter((row) => row[column] !== "").length / rows.length;
  return header.flatMap((name, column) => (firstComplication.has(name) || filled(column) >= 0.5 ? [column] : []));
}

/** The invented unit's one-sheet file, told again and again of other persons until it has so many rows: bytes of a CSV file. */
export function oneSheet(rows: number, firstCopy = 100): Buffer {
  const [header = [], ...cells] = readFileSync("demo-data/seven-years.csv", "utf8")
    .trimEnd()
    .split("\n")
    .map((line) => line.split(","));
  const columns = columnsKept(header, cells);
  const lineOf = (row: readonly string[]) => columns.map((column) => row[column]).join(",");
  const [head = "", ...lines] = [lineOf(header), ...cells.map(lineOf)];
  const text = [head];
  // the local number stands first: a copy's persons are nobody else's
  for (let i = 0; i < rows; i++) text.push(`${firstCopy + Math.floor(i / lines.length)}${lines[i % lines.length]}`);
  return Buffer.from(`${text.join("\n")}\n`);
}
