import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import type Database from "better-sqlite3";
import { RegistryNotOpened } from "./errors";

export type Migration = { readonly version: number; readonly sql: string };

/** Marks the file as a registry of ours, in SQLite's header ("LBok"). */
export const applicationId = 0x4c426f6b;

/** Beside this file, or below the project's root when a bundler has moved this file elsewhere. */
function migrationsFolder(): string {
  const beside = join(dirname(fileURLToPath(import.meta.url)), "migrations");
  return existsSync(beside) ? beside : join(process.cwd(), "db", "migrations");
}

/** The migrations of the house in order: `0001.sql` is version 1. */
export function shippedMigrations(folder = migrationsFolder()): readonly Migration[] {
  const files = readdirSync(folder).filter((file) => /^\d{4}\.sql$/.test(file));
  return files.sort().map((file) => ({ version: Number(file.slice(0, 4)), sql: readFileSync(join(folder, file), "utf8") }));
}

const versionOf = (db: Database.Database) => Number(db.pragma("user_version", { simple: true }));

/** Runs what is new in one transaction. The version is read again inside it: two processes may open a new registry at once. */
function runNew(db: Database.Database, migrations: readonly Migration[]): void {
  for (const { version, sql } of migrations) {
    if (version <= versionOf(db)) continue;
    db.exec(sql);
    db.pragma(`user_version = ${version}`);
  }
  db.pragma(`application_id = ${applicationId}`);
  const orphans: unknown = db.pragma("foreign_key_check");
  if (Array.isArray(orphans) && orphans.length > 0)
    throw new RangeError(`migrate requires whole foreign keys, received ${orphans.length} broken`);
}

/**
 * Brings a registry's tables up to the newest version: all of the new migrations, or none of them.
 * Foreign keys rest meanwhile, since a rebuilt table would take its children with it.
 * @throws RegistryNotOpened when the file was written by a newer version
 */
export function migrate(db: Database.Database, migrations: readonly Migration[] = shippedMigrations()): void {
  const newest = Math.max(0, ...migrations.map(({ version }) => version));
  const held = versionOf(db);
  if (held > newest) {
    throw new RegistryNotOpened("newer-registry", `migrate requires a registry of version ${newest} or older, received version ${held}`);
  }
  if (held === newest) return;
  db.pragma("foreign_keys = OFF");
  try {
    db.transaction(runNew).immediate(db, migrations);
  } finally {
    db.pragma("foreign_keys = ON");
  }
}
