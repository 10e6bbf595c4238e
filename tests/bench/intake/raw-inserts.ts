import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Database from "better-sqlite3";
import Papa from "papaparse";
import { setPragmas } from "@/db/pragmas";

/** The least that anybody would do: parse the file, and insert its cells as they are into one table, in one transaction. */
export function rawInserts(bytes: Buffer): number {
  const folder = mkdtempSync(join(tmpdir(), "lengthbook-raw-"));
  const db = new Database(join(folder, "raw.sqlite"));
  setPragmas(db);
  const { data } = Papa.parse<string[]>(bytes.toString("utf8"), { delimiter: ",", skipEmptyLines: true });
  const [header = [], ...rows] = data;
  db.exec(`CREATE TABLE sheet (${header.map((name) => `${name} TEXT`).join(", ")}) STRICT`);
  const insert = db.prepare(`INSERT INTO sheet VALUES (${header.map(() => "?").join(", ")})`);
  db.transaction(() => {
    for (const row of rows) insert.run(row.map((cell) => (cell === "" ? null : cell)));
  }).immediate();
  db.close();
  rmSync(folder, { recursive: true });
  return rows.length;
}
