// Bytes 0x80-0x9F; the five that the code page leaves open stay control characters, as browsers do.
// An own table: the decoder of Node 20 leaves these bytes as control characters, so a tab and a command line would read one file differently.
const upper = "€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ";
const chunkLength = 8192;

/** Text of bytes in Windows-1252 (WHATWG Encoding Standard, index windows-1252). */
export function decodeWindows1252(bytes: Uint8Array): string {
  const parts: string[] = [];
  const units = new Uint16Array(chunkLength);
  for (let from = 0; from < bytes.length; from += chunkLength) {
    const length = Math.min(chunkLength, bytes.length - from);
    for (let i = 0; i < length; i++) units[i] = unitOf(bytes[from + i] as number);
    parts.push(String.fromCharCode(...units.subarray(0, length)));
  }
  return parts.join("");
}

function unitOf(byte: number): number {
  return byte >= 0x80 && byte <= 0x9f ? upper.charCodeAt(byte - 0x80) : byte;
}
