import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Database from "better-sqlite3";
import { setPragmas } from "@/db/pragmas";
import { casebook, healing } from "@/lib/answers";
import { keyRing, prepare, readSheet, unitKeyOf } from "@/lib/intake";
import { openRegistry } from "@/lib/registry";
import { costOf, line } from "../intake/measured";
import { oneSheet } from "../intake/one-sheet";

// npx tsx tests/bench/answers/cold.ts [ROWS]: what the first answer costs a process that has read nothing yet, beside a bare select of all
// cells of the same tables.

const rows = Number(process.argv[2] ?? 50_000);
const [, , , given, asked] = process.argv;
const folder = given ?? mkdtempSync(join(tmpdir(), "lengthbook-cold-"));

async function bringIn(): Promise<void> {
  const { sheet } = readSheet(oneSheet(rows), { file: "sheet.csv" });
  if (!sheet) throw new Error("the sheet was refused");
  const ring = keyRing(unitKeyOf(new Uint8Array(32).fill(7)));
  const prepared = await prepare({ sheets: [sheet], ring, today: { year: 2026, month: 11, day: 25 } });
  const registry = await openRegistry(folder, { create: true });
  await registry.commit(prepared.rows, { at: "2026-01-31T09:30:00Z" });
  await registry.close();
}

/** Every version of segments and persons with its identity, each cell handed over once. */
function bareSelect(): void {
  const db = new Database(join(folder, "registry.sqlite"), { readonly: true });
  setPragmas(db);
  for (const table of ["person", "segment", "event"])
    for (const _ of db.prepare(`SELECT * FROM ${table}_id i JOIN ${table} v ON v.entity = i.entity`).raw().iterate());
  db.close();
}

/** One question in a process of its own: nothing is kept from another. */
async function askCold(what: string): Promise<void> {
  const registry = await openRegistry(folder);
  const cost = await costOf<unknown>(() =>
    what === "casebook" ? casebook(registry, { limit: 50 }) : healing(registry, { measure: "surgery-to-consolidation" }),
  );
  await registry.close();
  const bare = await costOf(bareSelect);
  console.log(line(`first answer of ${what}`, cost));
  console.log(`${line("bare select of persons, segments, events", bare)}: ${(cost.cpuMs / bare.cpuMs).toFixed(2)} times it`);
}

if (asked) await askCold(asked);
else {
  await bringIn();
  console.log(`${rows} segments`);
  for (const what of ["casebook", "healing"])
    spawnSync(process.execPath, ["--expose-gc", "--import", "tsx", import.meta.filename, String(rows), folder, what], { stdio: "inherit" });
  rmSync(folder, { recursive: true });
}
