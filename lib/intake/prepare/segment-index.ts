import type { StrippedRows } from "../types";
import type { AnyRow } from "./blank-row";

type Named = { readonly surgeryDay: number; readonly episode: number | null };

/** Segments and lines known of each person, from these files and from what is held. */
export type SegmentIndex = {
  add(row: AnyRow): void;
  addPerson(person: string, line: "dated" | "undated"): void;
  segmentsOf(person: string, bone: string, side: string): readonly Named[];
  lineOf(person: string): "dated" | "undated" | null;
};

export function segmentIndex(held: StrippedRows | null): SegmentIndex {
  const segments = new Map<string, Map<number, Named>>();
  const lines = new Map<string, "dated" | "undated">();
  const index: SegmentIndex = {
    add: ({ person, bone, side, surgeryDay, episode = null }) => {
      const key = `${person}|${bone}|${side}`;
      const known = segments.get(key) ?? new Map<number, Named>();
      segments.set(key, known);
      if (typeof surgeryDay === "number") known.set(surgeryDay, { surgeryDay, episode: typeof episode === "number" ? episode : null });
    },
    addPerson: (person, line) => {
      if (!lines.has(person)) lines.set(person, line);
    },
    segmentsOf: (person, bone, side) => [...(segments.get(`${person}|${bone}|${side}`)?.values() ?? [])],
    lineOf: (person) => lines.get(person) ?? null,
  };
  for (const row of held?.person ?? []) index.addPerson(row.person, row.line);
  for (const row of held?.segment ?? []) index.add(row);
  return index;
}
