/** One record of a comma-, semicolon- or tab-separated file; a cell is quoted where it must be. */
export function recordOf(cells: readonly string[], delimiter: "," | ";"): string {
  return cells.map((cell) => (/["\n\r]/.test(cell) || cell.includes(delimiter) ? `"${cell.replaceAll('"', '""')}"` : cell)).join(delimiter);
}

const windows1252: Readonly<Record<string, number>> = {
  "€": 0x80,
  "‚": 0x82,
  "…": 0x85,
  Š: 0x8a,
  Œ: 0x8c,
  Ž: 0x8e,
  "‘": 0x91,
  "’": 0x92,
  "“": 0x93,
  "”": 0x94,
  "•": 0x95,
  "–": 0x96,
  "—": 0x97,
  š: 0x9a,
  œ: 0x9c,
  ž: 0x9e,
  Ÿ: 0x9f,
};

/** @throws RangeError on a character that Windows-1252 doesn't have */
export function windows1252Bytes(text: string): Uint8Array {
  return Uint8Array.from(text, (character) => {
    const code = character.codePointAt(0) ?? 0;
    const byte = code < 0x80 || (code >= 0xa0 && code <= 0xff) ? code : windows1252[character];
    if (byte === undefined) throw new RangeError(`windows1252Bytes requires characters of Windows-1252, received U+${code.toString(16)}`);
    return byte;
  });
}
