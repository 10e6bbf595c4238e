import type { Value } from "@/lib/codebook";
import { parseSplitField } from "./split";
import type { Where } from "./where";

/**
 * The cohort of one group of a split: what was asked, and the value or the bin of each field.
 * @throws CohortError when a field can't be split by
 * @example groupWhere({}, ["bone"], { bone: "femur" }) // => { bone: ["femur"] }
 */
export function groupWhere(where: Where, by: readonly string[], key: Readonly<Record<string, Value>>): Where {
  const parts = by.map((text) => {
    const { id, cuts } = parseSplitField(text);
    const value = key[id] ?? null;
    return cuts.length > 0 && typeof value === "string" ? binWhere(id, value) : { [id]: [value] };
  });
  const all = Object.keys(where).length === 0 ? parts : [where, ...parts];
  const [only] = all;
  return only && all.length === 1 ? only : { all };
}

/** A bin begins with its first cut and ends under the next, which a range with both ends in it can't say. */
function binWhere(id: string, bin: string): Where {
  const { from, under } = boundsOf(bin);
  const below = under === null ? {} : { not: { [id]: { from: under } } };
  return { [id]: from === null ? { missing: false } : { from }, ...below };
}

function boundsOf(bin: string): { readonly from: number | null; readonly under: number | null } {
  if (bin.startsWith("under ")) return { from: null, under: Number(bin.slice("under ".length)) };
  if (bin.endsWith(" and over")) return { from: Number(bin.slice(0, -" and over".length)), under: null };
  const [from, under] = bin.split(" to under ");
  return { from: Number(from), under: Number(under) };
}
