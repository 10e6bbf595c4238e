import { snake, type TableName, versionedFieldsOf } from "@/lib/codebook";
import { columnDdl } from "./column-ddl";
import { identityTable, open, versionTable } from "./identities";
import { createTable, named, notErasing, refuse } from "./statements";

/** First columns of a version table: whose version, and from which batch until which. */
export function spanLines(name: string, entity: string): readonly string[] {
  return [
    `entity INTEGER NOT NULL ${entity}`,
    "since_batch INTEGER NOT NULL",
    "until_batch INTEGER NOT NULL",
    named(`${name}_span`, `since_batch >= 1 AND since_batch < until_batch AND until_batch <= ${open}`),
  ];
}

/** Last lines: with one number for open, these two forbid a second open version. */
export const spanKeys: readonly string[] = ["PRIMARY KEY (entity, since_batch)", "UNIQUE (entity, until_batch)"];

/** Triggers of a version table: a version is closed once, otherwise never changed, and deleted by erasure alone. */
export function versionTriggers(name: string, columns: readonly string[]): readonly string[] {
  return [
    refuse(
      `${name}_closed_once`,
      `UPDATE OF until_batch ON ${name}`,
      `${name}: a version is closed once`,
      `OLD.until_batch <> ${open} OR NEW.until_batch = ${open}`,
    ),
    refuse(
      `${name}_never_changed`,
      `UPDATE OF ${["entity", "since_batch", ...columns].join(", ")} ON ${name}`,
      `${name}: a version is never changed`,
    ),
    refuse(`${name}_never_deleted`, `DELETE ON ${name}`, `${name}: a version goes by erasure alone`, notErasing),
  ];
}

/** Statements of a version table. Its rows name their own identity; no key ever points at a version. */
export function versionDdl(table: TableName): readonly string[] {
  const name = versionTable(table);
  const ids = versionedFieldsOf(table).map(([id]) => id);
  const [entity = "", since = "", until = "", span = ""] = spanLines(
    name,
    `REFERENCES ${identityTable(table)} (entity) ON DELETE RESTRICT`,
  );
  const columns = ids.map((id) => columnDdl(name, table, id));
  return [createTable(name, [entity, since, until, ...columns, span, ...spanKeys]), ...versionTriggers(name, ids.map(snake))];
}
