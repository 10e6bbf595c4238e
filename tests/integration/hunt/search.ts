import type { Encoded } from "./encodings";

/** What is looked for: an identifier, its spelling and encoding. `isolated`: a match inside a longer word or number is chance. */
export type Needle = Encoded & { readonly of: string; readonly form: string; readonly isolated: "digits" | "letters" | null };

/** A finder of many needles in one pass. */
export type Finder = (bytes: Buffer, found: (needle: Needle, at: number) => void) => void;

const hash = (word: number) => Math.imul(word, 0x9e3779b1) >>> 16;

/** Goes over the bytes once: four bytes name the needles that could start there. Needles are at least four bytes long. */
export function makeFinder(needles: readonly Needle[]): Finder {
  const some = new Uint8Array(65_536);
  const byStart = new Map<number, Needle[]>();
  for (const needle of needles) {
    const word = needle.bytes.readInt32BE(0);
    some[hash(word)] = 1;
    const held = byStart.get(word);
    if (held) held.push(needle);
    else byStart.set(word, [needle]);
  }
  return (bytes, found) => {
    let word = 0;
    for (let end = 0; end < bytes.length; end++) {
      word = (word << 8) | (bytes[end] ?? 0);
      if (end < 3 || some[hash(word)] === 0) continue;
      const at = end - 3;
      for (const needle of byStart.get(word) ?? []) if (standsAt(bytes, needle, at)) found(needle, at);
    }
  };
}

function standsAt(bytes: Buffer, needle: Needle, at: number): boolean {
  const end = at + needle.bytes.length;
  if (end > bytes.length || bytes.compare(needle.bytes, 0, needle.bytes.length, at, end) !== 0) return false;
  if (needle.isolated === null || needle.unit === 0) return true;
  return !joins(bytes, needle, at - needle.unit) && !joins(bytes, needle, end);
}

/** Whether the character there belongs to the same word or number. */
function joins(bytes: Buffer, { unit, bigEndian, isolated }: Needle, at: number): boolean {
  if (at < 0 || at + unit > bytes.length) return false;
  const [first = 0, second = 0] = [bytes[at], unit === 2 ? bytes[at + 1] : 0];
  if ((bigEndian ? first : second) !== 0) return false;
  const character = String.fromCharCode(bigEndian ? second : first);
  return isolated === "digits" ? /\d/.test(character) : /[A-Za-z0-9]/.test(character);
}
