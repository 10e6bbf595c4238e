import type { Connection } from "@/db/open";
import type { TableName } from "@/lib/codebook";

/** What became of a row: its entity, its parents' entities, whether a version was written, and whether one was held before. */
export type Fate = {
  readonly entity: number;
  readonly above: readonly (number | null)[];
  readonly outcome: "committed" | "changed" | "unchanged";
};
/** Collects the segments that a batch touched and that the check of brought rows can't have seen whole. */
export type TouchedSegments = {
  readonly note: (table: TableName, fate: Fate) => void;
  readonly segments: ReadonlySet<number>;
  /** Whether a row of a table under these parents can have been known before the batch. */
  readonly mayBeKnown: (table: TableName, above: readonly (number | null)[]) => boolean;
};

/** The first number that no identity of a table had before the batch. */
function firstFresh(db: Connection, identities: string): number {
  return Number(db.prepare(`SELECT ifnull(max(entity), 0) + 1 FROM ${identities}`).pluck().get());
}

export function touchedIn(db: Connection): TouchedSegments {
  const fresh = { person: firstFresh(db, "person_id"), segment: firstFresh(db, "segment_id") };
  const ofPerson = db.prepare("SELECT entity FROM segment_id WHERE person_entity = ?").pluck();
  const brought = new Set<number>();
  const segments = new Set<number>();

  function notePerson({ entity, outcome }: Fate): void {
    brought.add(entity);
    // known by name until now: what waited for it was never looked at beside it
    if (outcome === "committed" && entity < fresh.person) for (const segment of ofPerson.all(entity) as number[]) segments.add(segment);
  }

  function noteSegment({ entity, above: [person = null], outcome }: Fate): void {
    if (outcome === "unchanged") return;
    if (outcome === "changed" || entity < fresh.segment || person === null || !brought.has(person)) segments.add(entity);
  }

  function noteEvent({ above: [, segment = null], outcome }: Fate): void {
    if (outcome !== "unchanged" && segment !== null && segment < fresh.segment) segments.add(segment);
  }

  return {
    segments,
    mayBeKnown: (table, [first = null]) =>
      table === "person" ? fresh.person > 1 : first === null || first < (table === "visit" ? fresh.segment : fresh.person),
    note: (table, fate) => {
      if (table === "person") notePerson(fate);
      else if (table === "segment") noteSegment(fate);
      else if (table === "event") noteEvent(fate);
    },
  };
}
