import { spawn } from "node:child_process";
import { copyFileSync, mkdtempSync, rmSync, statSync, truncateSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Database from "better-sqlite3";
import { expect, test } from "vitest";
import { openRegistry } from "@/lib/registry";
import { at, fresh, heldBy, noCheck } from "./folder";
import { aPerson, aSegment, manyRows, rowsOf } from "./rows";

const persons = 4000;
const before = rowsOf({ person: [aPerson(1)], segment: [aSegment(1)] });

/** Runs the child on a folder and kills it so long after it started its commit; without a time it may finish. Resolves to how long it ran. */
function commitInChild(folder: string, killAfterMs?: number): Promise<number> {
  const script = join(import.meta.dirname, "commit-and-die.ts");
  const child = spawn(process.execPath, ["--import", "tsx", script, folder, String(persons)], { stdio: ["ignore", "pipe", "inherit"] });
  let started = 0;
  return new Promise((resolve, reject) => {
    child.stdout.on("data", (text: Buffer) => {
      if (!String(text).includes("started")) return;
      started = performance.now();
      if (killAfterMs !== undefined) setTimeout(() => child.kill("SIGKILL"), killAfterMs);
    });
    child.on("exit", (code) => {
      if (killAfterMs === undefined && code !== 0) reject(new Error(`the child ended with ${code}`));
    });
    child.on("exit", () => (started > 0 ? resolve(performance.now() - started) : reject(new Error("the child never started its commit"))));
  });
}

async function registryWithOneBatch(): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), "lengthbook-crash-"));
  const registry = await openRegistry(folder, { create: true, check: noCheck });
  await registry.commit(before, { at });
  await registry.close();
  return folder;
}

async function commitAgain(folder: string): Promise<void> {
  const registry = await openRegistry(folder, { check: noCheck });
  await registry.commit(manyRows(persons), { at });
  await registry.close();
}

/** Opens what a crash left and tells how many of the batch's persons are held, having checked that the rest is whole. */
async function survivors(folder: string): Promise<number> {
  const registry = await openRegistry(folder, { check: noCheck });
  const batches = await registry.batches();
  for (const { batch, contentHash } of batches) expect(await registry.contentHash(batch)).toBe(contentHash);
  const rows = await heldBy(registry);
  await registry.close();
  const db = new Database(join(folder, "registry.sqlite"));
  expect([db.pragma("integrity_check", { simple: true }), db.pragma("foreign_key_check")]).toEqual(["ok", []]);
  // identities too: half a batch must not hide behind versions
  expect(db.prepare("SELECT count(*) FROM person_id").pluck().get()).toBe(db.prepare("SELECT count(*) FROM person").pluck().get());
  db.close();
  expect(rows.length).toBe(batches.reduce((sum, { counts }) => sum + counts.persons + counts.segments, 0));
  return rows.length / 2 - 1;
}

test("kill -9 in the middle of a commit leaves all of its rows or none, and the commit then goes through", async () => {
  const whole = await registryWithOneBatch();
  const commitMs = await commitInChild(whole);
  expect(await survivors(whole)).toBe(persons);
  rmSync(whole, { recursive: true });
  const left: number[] = [];
  for (const share of [0, 0.2, 0.4, 0.6, 0.8]) {
    const folder = await registryWithOneBatch();
    await commitInChild(folder, share * commitMs);
    left.push(await survivors(folder));
    await commitAgain(folder);
    expect(await survivors(folder)).toBe(persons);
    rmSync(folder, { recursive: true });
  }
  expect(left.filter((n) => n !== 0 && n !== persons)).toEqual([]);
  // killed before anything was written, at the latest
  expect(left[0]).toBe(0);
});

test("two processes that commit the same rows at once make one batch", async () => {
  const folder = await registryWithOneBatch();
  await Promise.all([commitInChild(folder), commitInChild(folder)]);
  expect(await survivors(folder)).toBe(persons);
  const registry = await openRegistry(folder, { check: noCheck });
  expect((await registry.batches()).map(({ batch }) => batch)).toEqual([1, 2]);
  await registry.close();
  rmSync(folder, { recursive: true });
});

test("a write-ahead log cut short at any place opens to a batch as it was committed", async () => {
  const registry = await fresh();
  await registry.commit(before, { at });
  await registry.commit(rowsOf({ person: [aPerson(2), aPerson(3)], segment: [aSegment(2), aSegment(1, { gainMm: 9 })] }), { at });
  await registry.undo(2, { at });
  const hashes = [await registry.contentHash(0), ...(await registry.batches()).map(({ contentHash }) => contentHash)];
  const file = join(registry.folder, "registry.sqlite");
  const seen = new Set<number>();
  for (let cut = 0; cut < statSync(`${file}-wal`).size; cut += 2048) {
    const copy = mkdtempSync(join(tmpdir(), "lengthbook-cut-"));
    for (const end of ["", "-wal"]) copyFileSync(file + end, join(copy, `registry.sqlite${end}`));
    truncateSync(join(copy, "registry.sqlite-wal"), cut);
    const opened = await openRegistry(copy, { check: noCheck });
    const { batch } = await opened.state();
    expect(await opened.contentHash()).toBe(hashes[batch]);
    seen.add(batch);
    await opened.close();
    rmSync(copy, { recursive: true });
  }
  expect([...seen]).toEqual([0, 1, 2]);
});
