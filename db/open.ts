import Database from "better-sqlite3";
import { RegistryNotOpened, sqliteCode } from "./errors";
import { registryPath } from "./folder";
import { applicationId, migrate } from "./migrate";
import { setPragmas } from "./pragmas";
import { requireSqlite } from "./sqlite-version";

export type Connection = Database.Database;

const stillOpen = new Set<Connection>();
// a process that ends without closing leaves -wal and -shm behind, and a copy of the file alone would lack the last batches
process.once("exit", () => {
  for (const db of stillOpen) db.close();
});

/** A file of another program, or no database at all, is never written to. */
function requireOurs(db: Connection, path: string): void {
  const id = Number(db.pragma("application_id", { simple: true }));
  const tables = Number(db.prepare("SELECT count(*) FROM sqlite_schema").pluck().get());
  if (id !== applicationId && tables > 0) {
    throw new RegistryNotOpened("not-a-registry", `${path} is a database of another program, not a registry`);
  }
}

/** Pages and rows as SQLite's quick check reads them, before anything is written: what is built on a damaged file is lost with it. */
function requireSound(db: Connection, path: string): void {
  if (db.pragma("quick_check(1)", { simple: true }) !== "ok") throw damaged(path);
}

function damaged(path: string, cause?: unknown): RegistryNotOpened {
  return new RegistryNotOpened("damaged", `${path} is damaged; nothing was written to it. Put it aside and restore a backup`, cause);
}

/** SQLite's own words say neither which file nor what to do. */
function told(error: unknown, path: string): unknown {
  if (error instanceof RegistryNotOpened) return error;
  const code = sqliteCode(error);
  if (code.startsWith("SQLITE_CORRUPT")) return damaged(path, error);
  if (code === "SQLITE_NOTADB") {
    return new RegistryNotOpened("not-a-registry", `${path} is not a registry: it is no SQLite database, or a damaged one`, error);
  }
  if (code.startsWith("SQLITE_BUSY")) return new RegistryNotOpened("busy", `${path} is being written by another process`, error);
  if (code.startsWith("SQLITE_READONLY") || code === "SQLITE_CANTOPEN") {
    return new RegistryNotOpened("folder-not-writable", `the registry requires a file that it can write to, received ${path}`, error);
  }
  return error;
}

function prepare(db: Connection, path: string): void {
  requireSqlite(String(db.prepare("SELECT sqlite_version()").pluck().get()));
  requireOurs(db, path);
  requireSound(db, path);
  setPragmas(db);
  migrate(db);
}

/** Closes a connection; a second time does nothing. */
export function closeRegistryFile(db: Connection): void {
  stillOpen.delete(db);
  if (db.open) db.close();
}

/**
 * Opens the registry's file in a folder, making both when asked, with every pragma set and read back and the tables up to date.
 * @throws RegistryNotOpened with the trouble and a sentence for people
 */
export function openRegistryFile(folder: string, { create = false } = {}): Connection {
  const path = registryPath(folder, { create });
  let db: Connection | undefined;
  try {
    db = new Database(path, { fileMustExist: true, timeout: 5000 });
    prepare(db, path);
    stillOpen.add(db);
    return db;
  } catch (error) {
    db?.close();
    throw told(error, path);
  }
}
