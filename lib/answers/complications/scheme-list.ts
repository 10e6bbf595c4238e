import { type Scheme, schemes } from "@/lib/outcomes";
import type { Note } from "../types";

/** A published scheme as it is offered: its id, name, classes and source. */
export type SchemeEntry = {
  readonly id: string;
  readonly title: string;
  readonly classes: readonly string[];
  readonly source: string;
  /** Whether the class is one treatment's, and not one event's. */
  readonly ofTreatment: boolean;
};

/** The schemes by which complications can be classed, in the order in which they are offered. */
export function schemeList(): readonly SchemeEntry[] {
  return schemes.map(({ id, title, classes, source, of }) => ({ id, title, classes, source, ofTreatment: of === "segment" }));
}

/** What of a scheme was not read in its source, said wherever its classes are. */
export function schemeNotes({ fromMemory }: Scheme): readonly Note[] {
  return fromMemory === null ? [] : [{ code: "from-memory", text: `From memory in this scheme: ${fromMemory}.` }];
}
