const signatures: readonly (readonly [kind: string, bytes: readonly number[]])[] = [
  ["a PDF", [0x25, 0x50, 0x44, 0x46]],
  ["a workbook or zip archive", [0x50, 0x4b, 0x03, 0x04]],
  ["a zip archive", [0x50, 0x4b, 0x05, 0x06]],
  ["a workbook of the older kind", [0xd0, 0xcf, 0x11, 0xe0]],
  ["a picture", [0x89, 0x50, 0x4e, 0x47]],
  ["a picture", [0xff, 0xd8, 0xff]],
  ["a picture", [0x47, 0x49, 0x46, 0x38]],
  ["a compressed file", [0x1f, 0x8b]],
  ["a rich-text document", [0x7b, 0x5c, 0x72, 0x74, 0x66]],
];

/** What a file is by its first bytes, whatever its name says; `null` when it may be a table of text. */
export function kindByFirstBytes(bytes: Uint8Array): string | null {
  return signatures.find(([, signature]) => signature.every((byte, i) => bytes[i] === byte))?.[0] ?? null;
}

/** Whether bytes are a packed file, as workbooks are. */
export function isPacked(bytes: Uint8Array): boolean {
  return bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 0x03 && bytes[3] === 0x04;
}

/** What a text is that no table holds; `null` when it may be a table. */
export function kindByText(text: string): string | null {
  if (text.includes("\u0000")) return "a file with NUL bytes";
  if (holdsControl(text.slice(0, 65_536))) return "a file with control characters";
  return /^\s*<(!doctype|html|\?xml)/i.test(text.slice(0, 200)) ? "a page of markup" : null;
}

/** A tab, a line feed and a carriage return are the only control characters of a table. */
function holdsControl(text: string): boolean {
  for (let i = 0; i < text.length; i++) {
    const unit = text.charCodeAt(i);
    if (unit < 0x20 && unit !== 0x09 && unit !== 0x0a && unit !== 0x0d) return true;
  }
  return false;
}
