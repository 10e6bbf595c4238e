export type Entry = { readonly name: string; readonly text: string };

const table = Uint32Array.from({ length: 256 }, (_, index) => {
  let value = index;
  for (let bit = 0; bit < 8; bit++) value = value & 1 ? (value >>> 1) ^ 0xedb88320 : value >>> 1;
  return value;
});

function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) crc = (crc >>> 8) ^ (table[(crc ^ byte) & 0xff] ?? 0);
  return (crc ^ 0xffffffff) >>> 0;
}

/** A ZIP archive of entries stored as they are, all dated 1 January 1980, so that the same entries give the same bytes (PKWARE's note, sections 4.3.7 to 4.3.16). */
export function zipOf(entries: readonly Entry[]): Uint8Array {
  const parts: Uint8Array[] = [];
  const directory: Uint8Array[] = [];
  let offset = 0;
  for (const { name, text } of entries) {
    const [nameBytes, bytes] = [new TextEncoder().encode(name), new TextEncoder().encode(text)];
    const fields = [20, 0x0800, 0, 0, 0x0021] as const;
    const sizes = [crc32(bytes), bytes.length, bytes.length] as const;
    const local = record(0x04034b50, [...fields], [...sizes], [nameBytes.length, 0], []);
    directory.push(record(0x02014b50, [20, ...fields], [...sizes], [nameBytes.length, 0, 0, 0, 0], [0, offset]), nameBytes);
    parts.push(local, nameBytes, bytes);
    offset += local.length + nameBytes.length + bytes.length;
  }
  const size = directory.reduce((sum, part) => sum + part.length, 0);
  const end = record(0x06054b50, [0, 0, entries.length, entries.length], [size, offset], [0], []);
  return joined([...parts, ...directory, end]);
}

/** A signature, 16-bit fields, 32-bit fields, and 16-bit and 32-bit fields again, all little-endian. */
function record(
  signature: number,
  shorts: readonly number[],
  longs: readonly number[],
  shortsAfter: readonly number[],
  longsAfter: readonly number[],
): Uint8Array {
  const bytes = (values: readonly number[], width: 2 | 4) =>
    values.flatMap((value) => Array.from({ length: width }, (_, index) => (value >>> (8 * index)) & 0xff));
  return Uint8Array.from([
    ...bytes([signature], 4),
    ...bytes(shorts, 2),
    ...bytes(longs, 4),
    ...bytes(shortsAfter, 2),
    ...bytes(longsAfter, 4),
  ]);
}

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const all = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let offset = 0;
  for (const part of parts) {
    all.set(part, offset);
    offset += part.length;
  }
  return all;
}
