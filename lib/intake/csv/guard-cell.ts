const first = "[\\s\\u00a0\\u200b-\\u200d\\ufeff]*[=+\\-@\\t\\r\\n\\u0000|＝＋－＠]";
// apostrophes before it too, so that a cell which already bears one comes back with it
const runs = new RegExp(`^'*${first}`);
const plainNumber = /^-?\d+(?:[.,]\d+)?$/;

/**
 * A cell that a spreadsheet would run as a formula gets an apostrophe before it (OWASP, CSV injection); numbers stay numbers.
 * @example guardCell("=1+1") // => "'=1+1"
 */
export function guardCell(cell: string): string {
  return runs.test(cell) && !plainNumber.test(cell) ? `'${cell}` : cell;
}

// what `guardCell` put there, so that a table written here comes back as it was
const guarded = new RegExp(`^'(?='*${first})`);

/** @example unguardCell("'=1+1") // => "=1+1" */
export function unguardCell(cell: string): string {
  // most cells begin otherwise, and a million of them are looked at
  return cell.startsWith("'") ? cell.replace(guarded, "") : cell;
}
