import { type Identity, identities, identityTable, open, versionTable } from "@/db/identities";
import type { Connection } from "@/db/open";
import { snake, type TableName, versionedFieldsOf } from "@/lib/codebook";
import type { Cells } from "./cells";
import { insertInBlocks } from "./insert-in-blocks";

/** Conditions of a natural key, worded as its index is: two blanks are one value. */
function keyCondition(identity: Identity): string {
  const parents = identity.parents.map(({ table, blank }) =>
    blank ? `ifnull(i.${table}_entity, 0) = ifnull(?, 0)` : `i.${table}_entity = ?`,
  );
  const own = identity.own.map((id) => (id === "onsetDay" ? "ifnull(i.onset_day, '') = ifnull(?, '')" : `i.${snake(id)} = ?`));
  return [...parents, ...own].join(" AND ");
}

/** The last number that an identity of a table ever had: one of an erased row is never given again. */
function lastNumber(db: Connection, ids: string): number {
  return Number(db.prepare("SELECT ifnull(max(seq), 0) FROM sqlite_sequence WHERE name = ?").pluck().get(ids));
}

/**
 * What writes a table. Natural keys by position: parents' entities first, then the key's own fields. What is identified and inserted is
 * in the tables after `flush`, so rows of one natural key must come as one.
 */
export function statementsOf(db: Connection, table: TableName) {
  const identity: Identity = identities[table];
  const [ids, versions] = [identityTable(table), versionTable(table)];
  const keyColumns = [...identity.parents.map((parent) => `${parent.table}_entity`), ...identity.own.map(snake)];
  const columns = versionedFieldsOf(table).map(([id]) => snake(id));
  const held = columns.map((column) => `v.${column}`).join(", ");
  const identified = insertInBlocks(db, ids, ["entity", ...keyColumns]);
  const inserted = insertInBlocks(db, versions, ["entity", "since_batch", "until_batch", ...columns]);
  let last = lastNumber(db, ids);
  // a version names its identity
  const flush = () => {
    identified.flush();
    inserted.flush();
  };
  return {
    find: db
      .prepare(
        `SELECT i.entity, v.since_batch, ${held} FROM ${ids} i LEFT JOIN ${versions} v ON v.entity = i.entity AND v.until_batch = ${open} WHERE ${keyCondition(identity)}`,
      )
      .raw(),
    close: db.prepare(`UPDATE ${versions} SET until_batch = ? WHERE entity = ? AND until_batch = ${open}`),
    /** Gives a natural key its number. */
    identify: (natural: Cells): number => {
      last += 1;
      identified.add([last, ...natural]);
      return last;
    },
    /** Inserts an open version. */
    insert: (entity: number, batch: number, cells: Cells): void => {
      inserted.add([entity, batch, open, ...cells]);
      if (inserted.isFull()) flush();
    },
    flush,
  };
}
export type Statements = ReturnType<typeof statementsOf>;
