import { open, versionTable } from "@/db/identities";
import type { Connection } from "@/db/open";
import { snake, type TableName, versionedFieldsOf } from "@/lib/codebook";

/** What is versioned: the tables of the codebook and the unit's settings. */
export type Versioned = TableName | "settings";

const columnsOf = (table: Versioned) => (table === "settings" ? ["content"] : versionedFieldsOf(table).map(([id]) => snake(id)));
const sqlNameOf = (table: Versioned) => (table === "settings" ? table : versionTable(table));

/** Batches after `batch` that touched an entity which it touched. */
export function laterBatches(db: Connection, table: Versioned, batch: number): readonly number[] {
  const name = sqlNameOf(table);
  const touched = `SELECT entity FROM ${name} WHERE since_batch = @batch OR until_batch = @batch`;
  return db
    .prepare(
      `SELECT since_batch FROM ${name} WHERE since_batch > @batch AND entity IN (${touched})
       UNION SELECT until_batch FROM ${name} WHERE until_batch > @batch AND until_batch < ${open} AND entity IN (${touched})`,
    )
    .pluck()
    .all({ batch })
    .map(Number);
}

/**
 * Puts every entity that `batch` touched back to what held before it, as versions of batch `now`. No later batch may have touched them:
 * then the versions open since `batch` are those that it wrote, and those it closed are what held before.
 * @returns how many entities were put back
 */
export function putBack(db: Connection, table: Versioned, { batch, now }: { readonly batch: number; readonly now: number }): number {
  const name = sqlNameOf(table);
  const columns = columnsOf(table).join(", ");
  db.prepare(`UPDATE ${name} SET until_batch = ? WHERE since_batch = ? AND until_batch = ${open}`).run(now, batch);
  db.prepare(
    `INSERT INTO ${name} (entity, since_batch, until_batch, ${columns}) SELECT entity, ?, ${open}, ${columns} FROM ${name} WHERE until_batch = ?`,
  ).run(now, batch);
  return Number(db.prepare(`SELECT count(DISTINCT entity) FROM ${name} WHERE since_batch = ? OR until_batch = ?`).pluck().get(now, now));
}
