import { type Identity, identities, identityTable, open, versionTable } from "@/db/identities";
import type { Connection } from "@/db/open";
import { snake, type TableName, versionedFieldsOf } from "@/lib/codebook";

const marks = (n: number) => Array.from({ length: n }, () => "?").join(", ");

/** Conditions of a natural key, worded as its index is: two blanks are one value. */
function keyCondition(identity: Identity): string {
  const parents = identity.parents.map(({ table, blank }) =>
    blank ? `ifnull(i.${table}_entity, 0) = ifnull(?, 0)` : `i.${table}_entity = ?`,
  );
  const own = identity.own.map((id) => (id === "onsetDay" ? "ifnull(i.onset_day, '') = ifnull(?, '')" : `i.${snake(id)} = ?`));
  return [...parents, ...own].join(" AND ");
}

/**
 * The prepared statements that write a table. Parameters by position: parents' entities first, then the key's own fields, or
 * `entity, since, until` and then the versioned fields.
 */
export function statementsOf(db: Connection, table: TableName) {
  const identity: Identity = identities[table];
  const [ids, versions] = [identityTable(table), versionTable(table)];
  const keyColumns = [...identity.parents.map((parent) => `${parent.table}_entity`), ...identity.own.map(snake)];
  const columns = versionedFieldsOf(table).map(([id]) => snake(id));
  const held = columns.map((column) => `v.${column}`).join(", ");
  return {
    find: db
      .prepare(
        `SELECT i.entity, v.since_batch, ${held} FROM ${ids} i LEFT JOIN ${versions} v ON v.entity = i.entity AND v.until_batch = ${open} WHERE ${keyCondition(identity)}`,
      )
      .raw(),
    identify: db.prepare(`INSERT INTO ${ids} (${keyColumns.join(", ")}) VALUES (${marks(keyColumns.length)})`),
    close: db.prepare(`UPDATE ${versions} SET until_batch = ? WHERE entity = ? AND until_batch = ${open}`),
    insert: db.prepare(
      `INSERT INTO ${versions} (entity, since_batch, until_batch, ${columns.join(", ")}) VALUES (${marks(columns.length + 3)})`,
    ),
  };
}
export type Statements = ReturnType<typeof statementsOf>;
