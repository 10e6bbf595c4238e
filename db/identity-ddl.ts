import { snake, type TableName } from "@/lib/codebook";
import { columnDdl } from "./column-ddl";
import { type Identity, identities, identityTable } from "./identities";
import { createTable, notErasing, refuse } from "./statements";

/** Column that names a parent's identity. */
const parentColumn = (parent: string) => `${parent}_entity`;

/** The key's columns as the natural key compares them: two blanks are one value. */
function naturalKey(identity: Identity): readonly string[] {
  const parents = identity.parents.map(({ table, blank }) => (blank ? `ifnull(${parentColumn(table)}, 0)` : parentColumn(table)));
  return [...parents, ...identity.own.map((id) => (id === "onsetDay" ? "ifnull(onset_day, '')" : snake(id)))];
}

function parentLines(identity: Identity): readonly string[] {
  return identity.parents.map(({ table, blank }) =>
    blank
      ? `${parentColumn(table)} INTEGER`
      : `${parentColumn(table)} INTEGER NOT NULL REFERENCES ${identityTable(table)} (entity) ON DELETE RESTRICT`,
  );
}

/** Foreign keys over two columns: an event's segment is a bone of the event's own person. */
function pairLines(table: TableName): readonly string[] {
  if (table === "segment") return ["UNIQUE (entity, person_entity)"];
  if (table === "event")
    return ["FOREIGN KEY (segment_entity, person_entity) REFERENCES segment_id (entity, person_entity) ON DELETE RESTRICT"];
  return [];
}

/**
 * Statements of an identity table. Numbers of erased identities are never given again (AUTOINCREMENT): a case keeps its address, and
 * no other case gets it.
 */
export function identityDdl(table: TableName): readonly string[] {
  const identity: Identity = identities[table];
  const name = identityTable(table);
  const columns = identity.own.map((id) => columnDdl(name, table, id));
  return [
    createTable(name, ["entity INTEGER PRIMARY KEY AUTOINCREMENT", ...parentLines(identity), ...columns, ...pairLines(table)]),
    `CREATE UNIQUE INDEX ${name}_natural_key ON ${name} (${naturalKey(identity).join(", ")});`,
    ...(table === "event" ? [`CREATE INDEX ${name}_segment ON ${name} (segment_entity);`] : []),
    refuse(`${name}_never_changed`, `UPDATE ON ${name}`, `${name}: an identity is never changed`),
    refuse(`${name}_never_deleted`, `DELETE ON ${name}`, `${name}: an identity goes by erasure alone`, notErasing),
  ];
}
