import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { build } from "@/lib/cli/setup/build.mjs";
import { freePort, startServer } from "@/lib/cli/setup/serve.mjs";
import { memoryOf } from "./memory-of";

// npm run bench:tab: memory of a server as it runs for a unit, over ten imports of ROWS rows each, every one of other persons, sent as a tab sends them.

const rows = Number(process.argv[2] ?? 20_000);
const folder = mkdtempSync(path.join(tmpdir(), "lengthbook-imports-"));
const file = path.join(folder, "lines.ndjson");

await build();
const { child, address, ended } = await startServer({ data: path.join(folder, "registry"), port: await freePort() });
try {
  console.log(`before: ${memoryOf(child.pid).now} MB held by the server`);
  for (let n = 1; n <= 10; n++) {
    const script = path.join(import.meta.dirname, "../intake/write-lines.ts");
    spawnSync(process.execPath, ["--import", "tsx", script, String(rows), String(100 + n * 500), file], { stdio: "inherit" });
    const body = readFileSync(file);
    const headers = { "Content-Type": "application/x-ndjson", Origin: address };
    const reply = await fetch(`${address}/intake/commit`, { method: "POST", headers, body });
    const { batch } = await reply.json();
    const { now, most } = memoryOf(child.pid);
    console.log(
      `import ${n} of ${rows} rows (${(body.length / 1e6).toFixed(0)} MB), batch ${batch}: ${now} MB held, ${most} MB at most so far`,
    );
  }
} finally {
  child.kill("SIGTERM");
  await ended;
  rmSync(folder, { recursive: true });
}
