const signatureLength = 8;
const headerLength = 25;
const metresPerInch = 0.0254;

/**
 * A PNG that says how many dots of it make an inch: the chunk `pHYs` (PNG, third edition, 11.3.4.3) is set behind the header, where
 * one that was there is replaced.
 * @throws RangeError when the bytes are no PNG
 */
export function withResolution(png: Uint8Array<ArrayBuffer>, dotsPerInch: number): Uint8Array<ArrayBuffer> {
  const start = signatureLength + headerLength;
  if (png.length < start || nameAt(png, signatureLength) !== "IHDR")
    throw new RangeError("withResolution requires a PNG, received other bytes");
  const rest = nameAt(png, start) === "pHYs" ? png.subarray(start + 21) : png.subarray(start);
  const chunk = resolutionChunk(Math.round(dotsPerInch / metresPerInch));
  const out = new Uint8Array(start + chunk.length + rest.length);
  out.set(png.subarray(0, start));
  out.set(chunk, start);
  out.set(rest, start + chunk.length);
  return out;
}

function nameAt(png: Uint8Array, chunkStart: number): string {
  return String.fromCharCode(...png.subarray(chunkStart + 4, chunkStart + 8));
}

/** Nine bytes of content: dots a metre across and down, and that the unit is the metre. */
function resolutionChunk(dotsPerMetre: number): Uint8Array {
  const chunk = new Uint8Array(21);
  const view = new DataView(chunk.buffer);
  view.setUint32(0, 9);
  chunk.set([0x70, 0x48, 0x59, 0x73], 4);
  view.setUint32(8, dotsPerMetre);
  view.setUint32(12, dotsPerMetre);
  view.setUint8(16, 1);
  view.setUint32(17, crc32(chunk.subarray(4, 17)));
  return chunk;
}

/** The check sum of a PNG chunk, over its name and content (PNG, third edition, annex D). */
function crc32(bytes: Uint8Array): number {
  let rest = 0xffffffff;
  for (const byte of bytes) {
    rest ^= byte;
    for (let bit = 0; bit < 8; bit++) rest = rest & 1 ? (rest >>> 1) ^ 0xedb88320 : rest >>> 1;
  }
  return (rest ^ 0xffffffff) >>> 0;
}
