import type { StrippedRows } from "../types";
import type { AnyRow } from "./blank-row";
import type { Joined } from "./options";

type Named = { readonly surgeryDay: number; readonly episode: number | null };

/** Segments and lines known of each person, from these files and from what is held. */
export type SegmentIndex = {
  add(row: AnyRow): void;
  addPerson(person: string, line: "dated" | "undated"): void;
  segmentsOf(person: string, bone: string, side: string): readonly Named[];
  lineOf(person: string): "dated" | "undated" | null;
};

export function segmentIndex(held: StrippedRows | null, joins: readonly Joined[] = []): SegmentIndex {
  const joined = new Map(joins.map((join) => [join.person, join]));
  const segments = new Map<string, Map<number, Named>>();
  // a load of segments alone never asks for one: rows are entered when first asked
  const waiting: AnyRow[] = [];
  const lines = new Map<string, "dated" | "undated">();
  const index: SegmentIndex = {
    add: (row) => {
      waiting.push(row);
    },
    addPerson: (person, line) => {
      // dates hold, whichever sheet comes first: rows without them will be set aside
      if (line === "dated" || !lines.has(person)) lines.set(person, line);
    },
    segmentsOf: (person, bone, side) => {
      for (const row of waiting.splice(0)) enter(segments, row);
      const own = segments.get(`${person}|${bone}|${side}`) ?? new Map<number, Named>();
      const join = joined.get(person);
      const others = join ? [...(segments.get(`${join.as}|${bone}|${side}`)?.values() ?? [])] : [];
      // of a number joined to another, the registry holds the segments on that one's line
      const moved = others.map(({ surgeryDay, episode }) => ({ surgeryDay: surgeryDay - (join?.days ?? 0), episode }));
      return [...own.values(), ...moved.filter(({ surgeryDay }) => !own.has(surgeryDay))];
    },
    lineOf: (person) => lines.get(person) ?? lines.get(joined.get(person)?.as ?? "") ?? null,
  };
  for (const row of held?.person ?? []) index.addPerson(row.person, row.line);
  for (const row of held?.segment ?? []) index.add(row);
  return index;
}

function enter(segments: Map<string, Map<number, Named>>, { person, bone, side, surgeryDay, episode = null }: AnyRow): void {
  const key = `${person}|${bone}|${side}`;
  const known = segments.get(key) ?? new Map<number, Named>();
  segments.set(key, known);
  if (typeof surgeryDay === "number") known.set(surgeryDay, { surgeryDay, episode: typeof episode === "number" ? episode : null });
}
