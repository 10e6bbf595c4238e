import { fold, releaseWords, type Value } from "@/lib/codebook";
import { describe } from "../values/describe";
import { type ReadCell, unread } from "./cell-read";
import { alone, notUnderstood, type Suspect } from "./not-understood";

const words = new Map(Object.entries(releaseWords).map(([text, field]) => [fold(text), field]));
const none = new Set(["none", "no", "nil", "n"]);
const all = [...new Set(Object.values(releaseWords))];

/** Reads one column *releases* with a list (`ITB, rectus`): a flag for each one named; `none` says that none was done. */
export function readReleases(suspect: Suspect = alone): ReadCell {
  const choices = [...words.keys()].join(", ");
  return (cell) => {
    if (none.has(fold(cell))) return { value: null, facts: [], also: Object.fromEntries(all.map((field) => [field, false])) };
    const also: Record<string, Value> = {};
    for (const part of cell.split(/[,;+/]| and /).map((text) => fold(text).replace(/ (release|released|recession)$/, ""))) {
      if (part === "") continue;
      const field = words.get(part);
      if (!field) return notUnderstood(cell, unread("not-a-code", describe(cell), { choices }), suspect);
      also[field] = true;
    }
    return { value: null, facts: [], also };
  };
}
