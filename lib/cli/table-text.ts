/** Rows as plain columns: text to the left, numbers to the right. */
export function tableText(headers: readonly string[], rows: readonly (readonly (string | number | null)[])[]): string {
  const cells = rows.map((row) => row.map((cell) => (cell === null ? "–" : String(cell))));
  const widths = headers.map((header, i) => Math.max(header.length, ...cells.map((row) => row[i]?.length ?? 0)));
  const right = headers.map(
    (_, i) => rows.length > 0 && rows.every((row) => row[i] === null || typeof row[i] === "number" || /^[–\d.,/% ]+$/.test(String(row[i]))),
  );
  const line = (row: readonly string[]) =>
    row
      .map((cell, i) => (right[i] ? cell.padStart(widths[i] ?? 0) : cell.padEnd(widths[i] ?? 0)))
      .join("  ")
      .trimEnd();
  return [line(headers), ...cells.map(line)].join("\n");
}
