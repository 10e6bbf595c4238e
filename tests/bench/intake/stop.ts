import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { encodeCommit, keyRing, prepare, readSheet, unitKeyOf } from "@/lib/intake";
import { openRegistry } from "@/lib/registry";
import { oneSheet } from "./one-sheet";

// npx tsx tests/bench/intake/stop.ts [ROWS]: how long preparing and committing a long sheet go on after they were told to stop, at ten
// moments of each, and what is held afterwards. The aim is half a second, and nothing.

const rows = Number(process.argv[2] ?? 100_000);
const moments = [0.02, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9];
const { sheet } = readSheet(oneSheet(rows), { file: "sheet.csv" });
if (!sheet) throw new Error("the sheet was refused");
const today = { year: 2026, month: 11, day: 25 };
const prepared = (signal: AbortSignal | null = null) =>
  // a ring remembers whom it has keyed: each walk has its own
  prepare({ sheets: [{ ...sheet }], ring: keyRing(unitKeyOf(new Uint8Array(32).fill(7))), today, signal });

const whole = performance.now();
const { rows: made } = await prepared();
const prepareMs = performance.now() - whole;
const folder = mkdtempSync(join(tmpdir(), "lengthbook-stop-"));
const registry = await openRegistry(folder, { create: true });

async function* bytes(): AsyncGenerator<Uint8Array> {
  const encoder = new TextEncoder();
  let piece = "";
  for (const text of encodeCommit({ rows: made, findings: {} })) {
    piece += text;
    // as they come over a wire
    if (piece.length < 65_536) continue;
    yield encoder.encode(piece);
    piece = "";
  }
  yield encoder.encode(piece);
}

/** From the word to the end of the work, in milliseconds; `null` when the work was done before. */
async function lag(afterMs: number, work: (signal: AbortSignal) => Promise<unknown>): Promise<number | null> {
  const stop = new AbortController();
  let told = 0;
  const timer = setTimeout(() => {
    told = performance.now();
    stop.abort();
  }, afterMs);
  const stopped = await work(stop.signal).then(
    () => false,
    () => told > 0,
  );
  clearTimeout(timer);
  return stopped ? performance.now() - told : null;
}

async function told(name: string, wholeMs: number, work: (signal: AbortSignal) => Promise<unknown>): Promise<void> {
  const lags: number[] = [];
  for (const moment of moments) {
    const ms = await lag(moment * wholeMs, work);
    if (ms !== null) lags.push(ms);
  }
  const longest = Math.max(...lags).toFixed(0);
  console.log(
    `${name}: ${(wholeMs / 1000).toFixed(1)} s in all; stopped ${lags.length} of ${moments.length} times, longest ${longest} ms after the word`,
  );
}

const at = "2026-01-31T09:30:00Z";

/** How long a commit takes that nobody stops, in a registry of its own. */
async function wholeCommitMs(): Promise<number> {
  const other = mkdtempSync(join(tmpdir(), "lengthbook-stop-"));
  const unstopped = await openRegistry(other, { create: true });
  const start = performance.now();
  await unstopped.commitLines(bytes(), { at });
  const ms = performance.now() - start;
  await unstopped.close();
  rmSync(other, { recursive: true });
  return ms;
}

console.log(`${rows} rows of one sheet`);
await told("preparing", prepareMs, prepared);
await told("committing", await wholeCommitMs(), (signal) => registry.commitLines(bytes(), { at, signal }));
console.log(`batches held afterwards: ${(await registry.batches()).length}`);
await registry.close();
rmSync(folder, { recursive: true });
