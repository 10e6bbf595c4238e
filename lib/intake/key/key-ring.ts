import { turn } from "../pace";
import { base32 } from "./base32";
import { hmacSha256, importHmacKey } from "./hmac";
import { normaliseLocalId, normaliseSurgeonName } from "./normalise";
import type { UnitKey } from "./unit-key";

const separator = "\u001f";
const pseudonymLength = 26;
/** Days in 100 years: no one's calendar can be guessed from the size of a day number. */
export const shiftModulus = 36_525;
// enough to keep the platform's threads busy, few enough for a worker to answer between two chunks
const chunkLength = 512;

/** A person as the registry knows it, and what to take off its calendar days. */
export type KeyedPerson = { readonly person: string; readonly shiftDays: number };

/** The unit's key in use. Each id is computed once. An id or name of which nothing is left when normalised throws `RangeError`. */
export type KeyRing = {
  /** 26 characters of base 32: HMAC-SHA-256(key, `lengthbook/person/1` 0x1F unit 0x1F normalised id). */
  pseudonym(unit: string, localId: string): Promise<string>;
  /** 0–36 524: HMAC-SHA-256(key, `lengthbook/day/1` 0x1F unit 0x1F normalised id), first 32 bits modulo 36 525. */
  shiftDays(unit: string, localId: string): Promise<number>;
  /** 26 characters of base 32: HMAC-SHA-256(key, `lengthbook/surgeon/1` 0x1F unit 0x1F normalised name). */
  surgeonCode(unit: string, name: string): Promise<string>;
  /** Many ids at once, in their order. `onChunk` hears how many are done. */
  persons(unit: string, localIds: readonly string[], onChunk?: (done: number) => void): Promise<readonly KeyedPerson[]>;
};

/** A ring of a key. */
export function keyRing(key: UnitKey): KeyRing {
  const imported = importHmacKey(key);
  const mac = async (message: string) => hmacSha256(await imported, message);
  const keyed = async (message: string) => base32(await mac(message), pseudonymLength);
  const shift = async (message: string) => firstWord(await mac(message)) % shiftModulus;

  const pseudonymOf = memoised(keyed);
  const shiftOf = memoised(shift);
  const surgeonOf = memoised(keyed);
  const ring: KeyRing = {
    pseudonym: async (unit, localId) => pseudonymOf(messageOf("person", unit, normaliseLocalId(localId))),
    shiftDays: async (unit, localId) => shiftOf(messageOf("day", unit, normaliseLocalId(localId))),
    surgeonCode: async (unit, name) => surgeonOf(messageOf("surgeon", unit, normaliseSurgeonName(name))),
    persons: (unit, localIds, onChunk) =>
      inChunks(localIds, onChunk, async (localId) => ({
        person: await ring.pseudonym(unit, localId),
        shiftDays: await ring.shiftDays(unit, localId),
      })),
  };
  return ring;
}

function messageOf(domain: "person" | "day" | "surgeon", unit: string, normalised: string): string {
  if (unit === "" || unit.includes(separator)) throw new RangeError("keyRing requires a unit code, received none");
  if (normalised === "") throw new RangeError("keyRing requires an id or name with a letter or digit, received none");
  return `lengthbook/${domain}/1${separator}${unit}${separator}${normalised}`;
}

function firstWord(bytes: Uint8Array<ArrayBuffer>): number {
  return new DataView(bytes.buffer).getUint32(0);
}

function memoised<T>(compute: (message: string) => Promise<T>): (message: string) => Promise<T> {
  const known = new Map<string, Promise<T>>();
  return (message) => {
    const held = known.get(message);
    if (held !== undefined) return held;
    const made = compute(message);
    known.set(message, made);
    return made;
  };
}

async function inChunks<A, B>(
  items: readonly A[],
  onChunk: ((done: number) => void) | undefined,
  work: (item: A) => Promise<B>,
): Promise<readonly B[]> {
  const results: B[] = [];
  for (let from = 0; from < items.length; from += chunkLength) {
    results.push(...(await Promise.all(items.slice(from, from + chunkLength).map(work))));
    onChunk?.(results.length);
    // work of the platform's threads comes back before messages do: without this a word to stop would wait for the last id
    await turn();
  }
  return results;
}
