import { open, versionTable } from "@/db/identities";
import type { Connection } from "@/db/open";
import { snake, type TableName, versionedFieldsOf } from "@/lib/codebook";

/** Columns of what is versioned beside the tables of the codebook: the unit's settings, corrections, numbers of one patient. */
const beside = { settings: ["content"], correction: ["sheet", "reason"], joined: ["into_entity", "days"] } as const;
type Beside = keyof typeof beside;
export type Versioned = TableName | Beside;

export const versionedBeside = Object.keys(beside) as readonly Beside[];
const isBeside = (table: Versioned): table is Beside => Object.hasOwn(beside, table);
const columnsOf = (table: Versioned): readonly string[] =>
  isBeside(table) ? beside[table] : versionedFieldsOf(table).map(([id]) => snake(id));
export const sqlNameOf = (table: Versioned) => (isBeside(table) ? table : versionTable(table));

/** Entities that `@batch` touched. */
export const touchedBy = (name: string) => `SELECT entity FROM ${name} WHERE since_batch = @batch OR until_batch = @batch`;

/** Batches after `@batch` that touched some entities, as a column. */
export const laterTouches = (name: string, entities: string) =>
  `SELECT since_batch FROM ${name} WHERE since_batch > @batch AND entity IN (${entities})
   UNION SELECT until_batch FROM ${name} WHERE until_batch > @batch AND until_batch < ${open} AND entity IN (${entities})`;

/** Batches after `batch` that touched an entity which it touched. */
export function laterBatches(db: Connection, table: Versioned, batch: number): readonly number[] {
  const name = sqlNameOf(table);
  return db
    .prepare(laterTouches(name, touchedBy(name)))
    .pluck()
    .all({ batch })
    .map(Number);
}

/**
 * Puts every entity that `batch` touched back to what held before it, as versions of batch `now`. What `batch` closed is what held
 * before; no later batch that still stands may have touched these entities.
 * @returns how many entities were put back
 */
export function putBack(db: Connection, table: Versioned, { batch, now }: { readonly batch: number; readonly now: number }): number {
  const name = sqlNameOf(table);
  const columns = columnsOf(table).join(", ");
  db.prepare(`UPDATE ${name} SET until_batch = @now WHERE until_batch = ${open} AND entity IN (${touchedBy(name)})`).run({ batch, now });
  db.prepare(
    `INSERT INTO ${name} (entity, since_batch, until_batch, ${columns})
     SELECT entity, @now, ${open}, ${columns} FROM ${name} WHERE until_batch = @batch`,
  ).run({ batch, now });
  return Number(
    db.prepare(`SELECT count(DISTINCT entity) FROM ${name} WHERE since_batch = @now OR until_batch = @now`).pluck().get({ now }),
  );
}
