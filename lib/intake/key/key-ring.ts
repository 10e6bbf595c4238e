import { turn } from "../pace";
import { base32 } from "./base32";
import { macUnder } from "./mac";
import { normaliseLocalId, normaliseSurgeonName } from "./normalise";
import type { UnitKey } from "./unit-key";

const separator = "\u001f";
const pseudonymLength = 26;
/** Days in 100 years: no one's calendar can be guessed from the size of a day number. */
export const shiftModulus = 36_525;
// few enough for a worker to answer between two chunks
const chunkLength = 1000;

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
  const mac = macUnder(key);
  const keyed = (message: string) => base32(mac(message), pseudonymLength);
  const persons = new Map<string, KeyedPerson>();
  const personOf = (unit: string, id: string): KeyedPerson => {
    const name = `${unit}${separator}${id}`;
    const held = persons.get(name);
    if (held) return held;
    const made = { person: keyed(messageOf("person", unit, id)), shiftDays: firstWord(mac(messageOf("day", unit, id))) % shiftModulus };
    persons.set(name, made);
    return made;
  };
  const surgeons = new Map<string, string>();
  const surgeonOf = (message: string): string => {
    const code = surgeons.get(message) ?? keyed(message);
    surgeons.set(message, code);
    return code;
  };
  return {
    pseudonym: async (unit, localId) => personOf(unit, normaliseLocalId(localId)).person,
    shiftDays: async (unit, localId) => personOf(unit, normaliseLocalId(localId)).shiftDays,
    surgeonCode: async (unit, name) => surgeonOf(messageOf("surgeon", unit, normaliseSurgeonName(name))),
    persons: (unit, localIds, onChunk) => inChunks(localIds, onChunk, (localId) => personOf(unit, normaliseLocalId(localId))),
  };
}

function messageOf(domain: "person" | "day" | "surgeon", unit: string, normalised: string): string {
  if (unit === "" || unit.includes(separator)) throw new RangeError("keyRing requires a unit code, received none");
  if (normalised === "") throw new RangeError("keyRing requires an id or name with a letter or digit, received none");
  return `lengthbook/${domain}/1${separator}${unit}${separator}${normalised}`;
}

function firstWord(bytes: Uint8Array<ArrayBuffer>): number {
  return new DataView(bytes.buffer).getUint32(0);
}

async function inChunks<A, B>(
  items: readonly A[],
  onChunk: ((done: number) => void) | undefined,
  work: (item: A) => B,
): Promise<readonly B[]> {
  const results: B[] = [];
  for (let from = 0; from < items.length; from += chunkLength) {
    for (const item of items.slice(from, from + chunkLength)) results.push(work(item));
    onChunk?.(results.length);
    if (results.length < items.length) await turn();
  }
  return results;
}
