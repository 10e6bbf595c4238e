/** Bytes of a text in UTF-8. */
export function utf8(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}

/** Bytes of a text in UTF-16, each unit in the order asked for. */
export function utf16(text: string, order: "le" | "be", mark: boolean): Uint8Array {
  const units = mark ? `\ufeff${text}` : text;
  const bytes = new Uint8Array(units.length * 2);
  const view = new DataView(bytes.buffer);
  for (let i = 0; i < units.length; i++) view.setUint16(i * 2, units.charCodeAt(i), order === "le");
  return bytes;
}

export function bytesOf(...values: number[]): Uint8Array {
  return Uint8Array.from(values);
}
