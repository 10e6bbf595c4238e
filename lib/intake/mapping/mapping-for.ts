import { sha256 } from "@noble/hashes/sha2.js";
import { bytesToHex } from "@noble/hashes/utils.js";
import type { Mapping, Sheet } from "../types";

/** A mapping that was kept, under a name of its own. */
export type SavedMapping = { readonly name: string; readonly mapping: Mapping };

const leastShare = 0.8;

/**
 * The saved mapping that fits a sheet best by its headers: at least four of five of the mapping's columns stand in the sheet; of several the
 * one that explains most of the sheet's headers, then the one that says least else. `null` when none fits.
 */
export function mappingFor({ headers }: Pick<Sheet, "headers">, saved: readonly SavedMapping[]): SavedMapping | null {
  const own = new Set(headers);
  let best: { readonly saved: SavedMapping; readonly explained: number; readonly share: number } | null = null;
  for (const each of saved) {
    const said = Object.keys(each.mapping.columns);
    const explained = said.filter((header) => own.has(header)).length;
    const share = said.length === 0 ? 0 : explained / said.length;
    if (share < leastShare) continue;
    if (!best || explained > best.explained || (explained === best.explained && share > best.share))
      best = { saved: each, explained, share };
  }
  return best?.saved ?? null;
}

/** A name for a mapping by its headers alone: the next one for the same headers takes its place. 12 hexadecimal digits of SHA-256. */
export function mappingName({ columns }: Pick<Mapping, "columns">): string {
  const text = Object.keys(columns).sort().join("\u001f");
  return bytesToHex(sha256(new TextEncoder().encode(text)).slice(0, 6));
}
