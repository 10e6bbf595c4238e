import { RegistryNotOpened } from "./errors";

/** The first release without the fault in which a checkpoint that meets a writer could damage a WAL database. */
const floor = [3, 51, 3] as const;

/**
 * @throws RegistryNotOpened when the SQLite inside better-sqlite3 is older than 3.51.3
 */
export function requireSqlite(version: string): void {
  const parts = version.split(".").map(Number);
  for (const [i, least] of floor.entries()) {
    const part = parts[i] ?? Number.NaN;
    if (part > least) return;
    if (part < least || Number.isNaN(part)) {
      throw new RegistryNotOpened("sqlite-too-old", `the registry requires SQLite ${floor.join(".")} or newer, received ${version}`);
    }
  }
}
