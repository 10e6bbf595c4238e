import type { FileRead, KeyRing, Prepared, StrippedRows, UnitKey, UnitKeyRecord } from "@/lib/intake";
import type { Beside } from "../_talk/beside";
import type { Door } from "../_talk/door";
import type { Pace } from "../_talk/messages";

/** The unit's key in the tab. `toKeep`: its sealed form, where the registry hasn't got it yet. */
export type KeyInHand = { readonly key: UnitKey; readonly ring: KeyRing; readonly toKeep: UnitKeyRecord | null };

/** Everything identifying, for as long as the tab lives. None of it is written anywhere. */
export type Session = {
  /** By name, in the order of their coming. */
  readonly files: Map<string, FileRead>;
  door: Door | null;
  key: KeyInHand | null;
  held: StrippedRows | null;
  beside: Beside | null;
  prepared: Prepared | null;
};

/** What a piece of work is given: a way to say how far it is, and the word to stop. */
export type Work = { readonly signal: AbortSignal; readonly pace: (pace: Pace) => void };

export function newSession(): Session {
  return { files: new Map(), door: null, key: null, held: null, beside: null, prepared: null };
}

export const random = (length: number) => crypto.getRandomValues(new Uint8Array(length));
