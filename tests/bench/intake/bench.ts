import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { keyRing, type Prepared, prepare, readSheet, unitKeyOf } from "@/lib/intake";
import { openRegistry } from "@/lib/registry";
import { type Cost, costOf, line } from "./measured";
import { oneSheet } from "./one-sheet";
import { rawInserts } from "./raw-inserts";

// npm run bench [-- ROWS]: what it costs to bring in a one-sheet file, from its bytes to the committed batch, beside papaparse and bare inserts
// of the same cells under the same pragmas. The machine may be shared: the processor time says more than the clock.

const rows = Number(process.argv[2] ?? 100_000);
const ring = keyRing(unitKeyOf(new Uint8Array(32).fill(7)));
const today = { year: 2026, month: 11, day: 25 };

async function prepared(bytes: Buffer): Promise<Prepared> {
  const { sheet } = readSheet(bytes, { file: "sheet.csv" });
  if (!sheet) throw new Error("the sheet was refused");
  const made = await prepare({ sheets: [sheet], ring, today });
  if (made.questions.length > 0) throw new Error("the sheet asks");
  return made;
}

const bytes = oneSheet(rows);
console.log(`${rows} rows of one sheet, ${(bytes.length / 1e6).toFixed(1)} MB`);
const raw = await costOf(() => rawInserts(bytes));
console.log(line("papaparse and bare inserts", raw));

const folder = mkdtempSync(join(tmpdir(), "lengthbook-bench-"));
const registry = await openRegistry(folder, { create: true });
const walk = await costOf(() => prepared(bytes));
console.log(line("read, match, strip, check", walk));
const commit = await costOf(() => registry.commit(walk.result.rows, { at: "2026-01-31T09:30:00Z" }));
console.log(line("commit", commit));
const ours: Cost = { wallMs: walk.wallMs + commit.wallMs, cpuMs: walk.cpuMs + commit.cpuMs };
console.log(line("read to commit", ours));
const { persons, bodyMeasures, segments, events } = commit.result.committed;
console.log(`held: ${persons} persons, ${segments} segments, ${bodyMeasures} body measures, ${events} events`);
console.log(
  `read to commit against bare inserts: ${(ours.cpuMs / raw.cpuMs).toFixed(2)} times the processor time, ${(ours.wallMs / raw.wallMs).toFixed(2)} times the wall time (aim: 3 or less)`,
);
await registry.close();
rmSync(folder, { recursive: true });
