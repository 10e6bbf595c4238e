import type { Encoding } from "../types";
import { decodeWindows1252 } from "./windows-1252";

export type Decoded = {
  readonly text: string;
  readonly encoding: Encoding;
  /** No mark said so: taken from the bytes themselves. */
  readonly guessed: boolean;
};

const sampleBytes = 4096;

/** Text of a file's bytes, its byte-order mark taken off, or `null` when they are no text in any encoding known here. */
export function decode(bytes: Uint8Array): Decoded | null {
  const marked = markedEncoding(bytes);
  if (marked) return withEncoding(bytes, marked, false);
  const wide = unmarkedUtf16(bytes);
  if (wide) return withEncoding(bytes, wide, true);
  return withEncoding(bytes, "utf-8", false) ?? { text: decodeWindows1252(bytes), encoding: "windows-1252", guessed: true };
}

function withEncoding(bytes: Uint8Array, encoding: "utf-8" | "utf-16le" | "utf-16be", guessed: boolean): Decoded | null {
  try {
    return { text: new TextDecoder(encoding, { fatal: true }).decode(bytes), encoding, guessed };
  } catch {
    return null;
  }
}

function markedEncoding(bytes: Uint8Array): "utf-8" | "utf-16le" | "utf-16be" | null {
  const [a, b, c] = bytes;
  if (a === 0xef && b === 0xbb && c === 0xbf) return "utf-8";
  if (a === 0xff && b === 0xfe) return "utf-16le";
  return a === 0xfe && b === 0xff ? "utf-16be" : null;
}

/** Latin text in UTF-16 has a zero in every second byte; which one tells the order. */
function unmarkedUtf16(bytes: Uint8Array): "utf-16le" | "utf-16be" | null {
  const length = Math.min(sampleBytes, bytes.length) & ~1;
  if (length < 4) return null;
  let evenZeros = 0;
  let oddZeros = 0;
  for (let i = 0; i < length; i += 2) {
    if (bytes[i] === 0) evenZeros++;
    if (bytes[i + 1] === 0) oddZeros++;
  }
  const many = length / 2 / 2;
  if (oddZeros > many && evenZeros === 0) return "utf-16le";
  return evenZeros > many && oddZeros === 0 ? "utf-16be" : null;
}
