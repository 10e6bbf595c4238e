import { open } from "@/db/identities";
import type { Connection } from "@/db/open";
import { tableNames } from "@/lib/codebook";
import { countsOf } from "../counts";
import { requireAt } from "../keep/at";
import { enterBatch, newestBatch } from "../keep/ledger";
import { hashAsOf } from "../read/content-hash";
import type { Counts } from "../types";
import { joinsAsOf, rootOf } from "./groups";
import { joinViewAsOf } from "./join-view";
import { NotOnePatient } from "./not-one-patient";

export type JoinOptions = {
  /** The person, by its entity, whose number is a second one. */
  readonly person: number;
  /** The person that it is. */
  readonly into: number;
  /** What to add to a day of the first so that it lies on the line of the other: the difference of their shifts, which only the key tells. */
  readonly days: number;
  readonly at: string;
};
export type JoinResult = {
  readonly batch: number;
  readonly contentHash: string;
  /** Rows that both numbers held: they are one now. */
  readonly same: Counts;
};

type HeldPerson = { readonly sex: string | null; readonly line: string };

function heldPerson(db: Connection, entity: number): HeldPerson {
  const held = db.prepare(`SELECT sex, line FROM person WHERE entity = ? AND until_batch = ${open}`).get(entity) as HeldPerson | undefined;
  if (!held) throw new RangeError("join requires two persons that are held, received one that isn't");
  return held;
}

const told: ReadonlySet<string | null> = new Set(["female", "male"]);

function requireOnePatient(a: HeldPerson, b: HeldPerson, days: number): void {
  if (a.line !== b.line) throw new NotOnePatient("line");
  if (told.has(a.sex) && told.has(b.sex) && a.sex !== b.sex) throw new NotOnePatient("sex");
  // days that came without dates lie on no calendar: two such lines are one
  if (a.line === "undated" && days !== 0) throw new RangeError(`join requires 0 days between undated lines, received ${days}`);
}

/**
 * Joins two numbers of one patient, within the caller's transaction: from now on the rows of the second are read as the first's, and later
 * files of either number add to the same patient. Nothing is rewritten, so parting them gives each its own again.
 * @throws NotOnePatient; RangeError for persons that aren't held, one joined already, or a circle
 */
export function joinPersons(db: Connection, { person, into, days, at }: JoinOptions): JoinResult {
  requireAt(at);
  const batch = (newestBatch(db)?.batch ?? 0) + 1;
  const joins = joinsAsOf(db, batch - 1);
  if (joins.some((join) => join.person.entity === person))
    throw new RangeError("join requires a number that isn't joined yet, received one that is");
  const root = rootOf(joins, into);
  if (root.entity === person) throw new RangeError("join requires two patients, received one");
  requireOnePatient(heldPerson(db, person), heldPerson(db, root.entity), days);
  const insert = db.prepare("INSERT INTO joined (entity, since_batch, until_batch, into_entity, days) VALUES (?, ?, ?, ?, ?)");
  insert.run(person, batch, open, root.entity, days + root.days);
  return { ...entered(db, batch, "join", at), same: sameRows(db, batch, root.entity) };
}

/**
 * Parts a number from the patient that it was joined to, with all that came under it before and since.
 * @throws RangeError when it isn't joined
 */
export function partPerson(db: Connection, { person, at }: Pick<JoinOptions, "person" | "at">): Omit<JoinResult, "same"> {
  requireAt(at);
  const batch = (newestBatch(db)?.batch ?? 0) + 1;
  const { changes } = db.prepare(`UPDATE joined SET until_batch = ? WHERE entity = ? AND until_batch = ${open}`).run(batch, person);
  if (changes === 0) throw new RangeError("part requires a number that is joined, received one that isn't");
  return entered(db, batch, "part", at);
}

function entered(db: Connection, batch: number, kind: "join" | "part", at: string): Omit<JoinResult, "same"> {
  const contentHash = hashAsOf(db, batch);
  const counts = countsOf((table) => (table === "person" ? 1 : 0));
  enterBatch(db, { batch, kind, at, counts, contentHash, undoes: null });
  return { batch, contentHash };
}

function sameRows(db: Connection, batch: number, root: number): Counts {
  const view = joinViewAsOf(db, batch);
  const group = view?.groupOf(root);
  const same = new Map(
    tableNames.map((table) => [table, group && view ? view.rowsOf(table, group).filter(({ entities }) => entities.length > 1).length : 0]),
  );
  return countsOf((table) => same.get(table) ?? 0);
}
