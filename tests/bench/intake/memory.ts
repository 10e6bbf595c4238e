import { spawnSync } from "node:child_process";
import { createReadStream, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createInterface } from "node:readline";
import { collectCommit } from "@/lib/intake";
import { openRegistry } from "@/lib/registry";

// npm run bench: memory of a process that takes ten sheets of ROWS rows, one after the other, as the server does: each line checked as it
// comes, then one commit. What is left after each is told when everything that can be collected has been.

const rows = Number(process.argv[2] ?? 20_000);
const imports = 10;
const folder = mkdtempSync(join(tmpdir(), "lengthbook-memory-"));
const file = join(folder, "lines.ndjson");
const registry = await openRegistry(join(folder, "registry"), { create: true });

async function bringIn(): Promise<void> {
  const collector = collectCommit();
  for await (const text of createInterface({ input: createReadStream(file) })) collector.take(text);
  const { rows: taken, findings } = collector.finish();
  await registry.commit(taken, { at: "2026-01-31T09:30:00Z", findings });
}

function writeLines(copy: number): void {
  const script = join(import.meta.dirname, "write-lines.ts");
  const { status } = spawnSync(process.execPath, ["--import", "tsx", script, String(rows), String(copy), file], { stdio: "inherit" });
  if (status !== 0) throw new Error("the sheet could not be prepared");
}

const megabytes = (bytes: number) => `${(bytes / 1e6).toFixed(0)} MB`;
const lefts: number[] = [];
for (let n = 1; n <= imports; n++) {
  writeLines(100 + n * 500);
  await bringIn();
  globalThis.gc?.();
  const { heapUsed, rss } = process.memoryUsage();
  lefts.push(heapUsed);
  console.log(`import ${String(n).padStart(2)}: ${megabytes(heapUsed)} held by JavaScript, ${megabytes(rss)} by the process`);
}
console.log(`highest that the process ever was: ${megabytes(process.resourceUsage().maxRSS * 1024)}`);
const growth = ((lefts.at(-1) ?? 0) - (lefts[1] ?? 0)) / 1e6;
console.log(`held by JavaScript, tenth import less second: ${growth.toFixed(1)} MB`);
await registry.close();
rmSync(folder, { recursive: true });
