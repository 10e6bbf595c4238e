import Database from "better-sqlite3";
import { migrate } from "@/db/migrate";

/** A registry's tables in memory. */
export function memory(): Database.Database {
  const db = new Database(":memory:");
  db.pragma("foreign_keys = ON");
  db.pragma("recursive_triggers = ON");
  migrate(db);
  return db;
}

/** SQLite's message of what a statement is refused for; the test fails when it is not refused. */
export function refusalOf(act: () => unknown): string {
  try {
    act();
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
  throw new Error("nothing was refused");
}

export const keyed = (n: number) => n.toString().padStart(26, "0");
