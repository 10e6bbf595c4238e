import { type CodeField, fieldOf, fold, type Value } from "@/lib/codebook";
import { type CellRead, type ReadCell, unread } from "./cell-read";
import type { Suspect } from "./not-understood";
import { readCodes, type Spellings, spellingsOf } from "./read-code";

const boneField = fieldOf("segment", "bone") as CodeField;
const sideField = fieldOf("segment", "side") as CodeField;
const bones = spellingsOf(boneField);
const sides = spellingsOf(sideField);
const both = new Set(["both", "bilateral", "b", "b l", "bl", "left and right", "right and left", "l r", "r l", "both sides", "l+r", "r+l"]);

/** A bone and a side in one cell: *Femur L*, *left tibia*, *LF*, *RT*; `null` when the cell is no such pair. */
export function bonePair(cell: string): { bone: string; side: string } | "both" | null {
  const words = fold(cell).split(" ");
  for (let cut = 1; cut < words.length; cut++) {
    const pair = ordered(words.slice(0, cut).join(" "), words.slice(cut).join(" "));
    if (pair) return pair;
  }
  const [letters = ""] = words;
  return words.length === 1 && letters.length === 2 ? ordered(letters.charAt(0), letters.charAt(1)) : null;
}

function ordered(first: string, second: string): { bone: string; side: string } | "both" | null {
  return joined(first, second) ?? joined(second, first);
}

function joined(boneWord: string, sideWord: string): { bone: string; side: string } | "both" | null {
  const bone = bones.get(boneWord);
  if (!bone) return null;
  const side = sides.get(sideWord);
  if (side) return { bone, side };
  return both.has(sideWord) ? "both" : null;
}

function pairRead(cell: string, fill: "bone" | "side"): CellRead | null {
  const pair = bonePair(cell);
  if (pair === null) return null;
  if (pair === "both") return unread("one-row-two-sides", "both sides in one row");
  const other = fill === "bone" ? "side" : "bone";
  const also: Record<string, Value> = { [other]: pair[other] };
  return { value: pair[fill], facts: [], also };
}

/** Reads a column of bones, each with or without its side. */
export function readBones(said: Spellings, suspect?: Suspect): ReadCell {
  const codes = readCodes(boneField, said, suspect);
  return (cell) => (bones.has(fold(cell)) ? codes(cell) : (pairRead(cell, "bone") ?? codes(cell)));
}

/** Reads a column of sides, each with or without its bone. Both sides in one row can't be told apart. */
export function readSides(said: Spellings, suspect?: Suspect): ReadCell {
  const codes = readCodes(sideField, said, suspect);
  return (cell) => {
    if (both.has(fold(cell))) return unread("one-row-two-sides", "both sides in one row");
    return sides.has(fold(cell)) ? codes(cell) : (pairRead(cell, "side") ?? codes(cell));
  };
}
