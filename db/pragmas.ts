import type Database from "better-sqlite3";
import { RegistryNotOpened } from "./errors";

/** What each connection sets and then reads back: a pragma that a build of SQLite ignores is ignored in silence. */
const pragmas: readonly (readonly [name: string, set: string, read: string | number])[] = [
  ["journal_mode", "WAL", "wal"],
  // FULL: a batch is announced only when it would survive a power cut
  ["synchronous", "FULL", 2],
  ["foreign_keys", "ON", 1],
  // without it INSERT OR REPLACE would delete a row and ask no trigger
  ["recursive_triggers", "ON", 1],
  ["secure_delete", "ON", 1],
  ["busy_timeout", "5000", 5000],
  ["trusted_schema", "OFF", 0],
  ["cell_size_check", "ON", 1],
  ["temp_store", "MEMORY", 2],
  ["mmap_size", "0", 0],
  // 32 MB: with SQLite's 2 MB a large batch would be read back from the log page by page while it is written and hashed
  ["cache_size", "-32768", -32768],
];

/**
 * Sets the pragmas of a connection and reads each back.
 * @throws RegistryNotOpened when one doesn't hold
 */
export function setPragmas(db: Database.Database): void {
  for (const [name, set, expected] of pragmas) {
    db.pragma(`${name} = ${set}`);
    const read: unknown = db.pragma(name, { simple: true });
    if (read !== expected) throw new RegistryNotOpened("pragma-refused", `setPragmas requires ${name} = ${set}, received ${String(read)}`);
  }
}
