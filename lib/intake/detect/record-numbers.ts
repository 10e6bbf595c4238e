const fewestCells = 8;

/**
 * Whether a column's filled cells look like record numbers: at least 95 % differ, each has 5 to 12 characters, at least 60 % of them
 * digits, and none is a decimal number. Fewer than eight cells say nothing. Our choice; no source.
 */
export function looksLikeRecordNumbers(cells: Iterable<string>): boolean {
  const different = new Set<string>();
  let filled = 0;
  for (const text of cells) {
    const cell = text.trim();
    if (cell === "") continue;
    if (!isNumberLike(cell)) return false;
    filled++;
    different.add(cell);
  }
  return filled >= fewestCells && different.size >= 0.95 * filled;
}

function isNumberLike(cell: string): boolean {
  if (cell.length < 5 || cell.length > 12 || /^[+-]?\d*[.,]\d+$/.test(cell)) return false;
  return (cell.match(/\d/g) ?? []).length >= 0.6 * cell.length;
}
