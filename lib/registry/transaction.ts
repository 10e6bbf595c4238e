import { sqliteCode } from "@/db/errors";
import { identityTable, versionTable } from "@/db/identities";
import type { Connection } from "@/db/open";
import { type FindingCode, fieldsOf, snake, type TableName, tableNames } from "@/lib/codebook";
import { refusal } from "./commit/refusals";
import { NothingCommitted, RowsRefused } from "./errors";

/** What the finding is when a table itself refuses a cell: the last resort, since intake's check speaks first. */
const codesByRule: readonly (readonly [pattern: RegExp, code: FindingCode, expected: string])[] = [
  [/CHECK constraint failed: (\S+)_(?:limits|days)$/, "out-of-hard-range", "a value within the codebook's limits"],
  [/CHECK constraint failed: (\S+)_(?:codes|listed|keyed|flag)$/, "not-a-code", "a code of the codebook"],
  [/NOT NULL constraint failed: (\S+)$/, "required-missing", "a value"],
  [/cannot store \w+ value in \w+ column (\S+)$/, "not-a-number", "a value of the column's kind"],
];

/** Table and field of a column as SQLite names it: `segment.gain_mm`, or by its rule `segment_gain_mm`, of an identity `segment_id_bone`. */
function columnNamed(name: string): { readonly table: TableName | null; readonly field: string | null } {
  const fields = tableNames.flatMap((table) => fieldsOf(table).map(([field]) => ({ table, field })));
  const named = ({ table, field }: { table: TableName; field: string }) =>
    [versionTable(table), identityTable(table)].some((owner) => [`${owner}.${snake(field)}`, `${owner}_${snake(field)}`].includes(name));
  return fields.find(named) ?? { table: null, field: null };
}

/** SQLite's refusals name the rule, never the value: they may be told as they are. */
function told(error: unknown): unknown {
  if (!(error instanceof Error)) return error;
  const code = sqliteCode(error);
  if (code.startsWith("SQLITE_CONSTRAINT")) {
    for (const [pattern, finding, expected] of codesByRule) {
      const column = pattern.exec(error.message)?.[1];
      if (!column) continue;
      const where = { ...columnNamed(column), place: null };
      return new RowsRefused([refusal(finding, where, ["a value that its column refuses", expected, "correct the cell"])]);
    }
  }
  if (code.startsWith("SQLITE_BUSY"))
    return new NothingCommitted("another process is writing to the registry; nothing was committed", { cause: error });
  if (code === "SQLITE_FULL") return new NothingCommitted("the disk is full; nothing was committed", { cause: error });
  if (code.startsWith("SQLITE_IOERR") || code.startsWith("SQLITE_READONLY") || code === "SQLITE_CANTOPEN") {
    return new NothingCommitted("the registry's file could not be written; nothing was committed", { cause: error });
  }
  return error;
}

/** Runs work in one IMMEDIATE transaction: all of it holds, or nothing. Nothing may be awaited inside. */
export function inTransaction<T>(db: Connection, work: () => T): T {
  try {
    return db.transaction(work).immediate();
  } catch (error) {
    throw told(error);
  }
}
