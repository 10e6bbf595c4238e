import { open } from "@/db/identities";
import type { Connection } from "@/db/open";

/** A number of a patient: a person as the key names it, and what to add to its days so that they lie on the line of the first. */
export type Member = { readonly entity: number; readonly person: string; readonly days: number };
/** The numbers of one patient, the first of them first: its rows are the patient's, and the others' are read as its own. */
export type Group = { readonly root: Member; readonly members: readonly Member[] };
/** A person joined into another. */
export type Join = { readonly person: Member; readonly into: number; readonly since: number };

type Row = { entity: number; person: string; into_entity: number; days: number; since_batch: number };

/** Joins that held as of a batch, each with its own difference of days. */
export function joinsAsOf(db: Connection, batch: number): readonly Join[] {
  const rows = db
    .prepare(
      `SELECT j.entity, p.person, j.into_entity, j.days, j.since_batch FROM joined j JOIN person_id p ON p.entity = j.entity
       WHERE j.since_batch <= @batch AND @batch < j.until_batch ORDER BY j.entity`,
    )
    .all({ batch: Math.min(batch, open - 1) }) as Row[];
  return rows.map(({ entity, person, into_entity: into, days, since_batch: since }) => ({ person: { entity, person, days }, into, since }));
}

/** Where a person's rows are read: the first number of its patient, and the days between their lines. */
export function rootOf(joins: readonly Join[], entity: number): { readonly entity: number; readonly days: number } {
  const byPerson = new Map(joins.map((join) => [join.person.entity, join]));
  let [at, days] = [entity, 0];
  for (let join = byPerson.get(at); join; join = byPerson.get(at)) [at, days] = [join.into, days + join.person.days];
  return { entity: at, days };
}

/** The patients with several numbers as of a batch; a chain of joins is one patient. */
export function groupsAsOf(db: Connection, batch: number): readonly Group[] {
  const joins = joinsAsOf(db, batch);
  if (joins.length === 0) return [];
  const nameOf = db.prepare("SELECT person FROM person_id WHERE entity = ?").pluck();
  const groups = new Map<number, Member[]>();
  for (const { person } of joins) {
    const { entity: root, days } = rootOf(joins, person.entity);
    const members = groups.get(root) ?? [{ entity: root, person: String(nameOf.get(root)), days: 0 }];
    groups.set(root, [...members, { ...person, days }]);
  }
  return [...groups.values()].map((members) => ({ root: members[0] as Member, members }));
}
