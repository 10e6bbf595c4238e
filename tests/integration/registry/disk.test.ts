import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { expect, test } from "vitest";
import { closeRegistryFile, openRegistryFile } from "@/db/open";
import { NothingCommitted, openRegistry } from "@/lib/registry";
import { commitRows } from "@/lib/registry/commit/commit";
import { inTransaction } from "@/lib/registry/transaction";
import { at, fresh, noCheck } from "./folder";
import { aPerson, aSegment, manyRows, rowsOf } from "./rows";

const before = rowsOf({ person: [aPerson(1)], segment: [aSegment(1)] });

/** A registry with one batch, closed; and what a second commit makes of it elsewhere. */
async function oneBatch() {
  const registry = await fresh();
  const { contentHash } = await registry.commit(before, { at });
  await registry.close();
  const other = await fresh();
  await other.commit(before, { at });
  return { folder: registry.folder, contentHash, after: (await other.commit(manyRows(2000), { at })).contentHash };
}

/** The registry works again, and holds what a commit without trouble holds. */
async function expectToWorkAgain(folder: string, after: string): Promise<void> {
  const registry = await openRegistry(folder, { check: noCheck });
  expect(await registry.commit(manyRows(2000), { at })).toMatchObject({ batch: 2, contentHash: after });
  await registry.close();
}

test("a full disk: a clear message, nothing written, and all is well when there is room again", async () => {
  const { folder, contentHash, after } = await oneBatch();
  const db = openRegistryFile(folder);
  // SQLite's own word for a disk without room, given when the file would grow beyond so many pages
  const pages = Number(db.pragma("page_count", { simple: true }));
  db.pragma(`max_page_count = ${pages + 20}`);
  const commit = () => inTransaction(db, () => commitRows(db, manyRows(2000), { at }, noCheck));
  expect(commit).toThrow(NothingCommitted);
  expect(commit).toThrow("the disk is full; nothing was committed");
  closeRegistryFile(db);
  const registry = await openRegistry(folder);
  expect([await registry.state(), await registry.contentHash()]).toEqual([{ batch: 1, erasures: 0 }, contentHash]);
  await registry.close();
  await expectToWorkAgain(folder, after);
});

test("a system that lets the file grow no further: a clear message, nothing written, and all is well without the limit", async () => {
  const { folder, contentHash, after } = await oneBatch();
  const script = join(import.meta.dirname, "commit-under-limit.ts");
  // blocks of 512 bytes in sh: the write-ahead log may have 400 KB
  const words = ["--import", "tsx", script, folder, "2000"].map((word) => `'${word}'`).join(" ");
  const { stdout, stderr } = spawnSync("sh", ["-c", `ulimit -f 800; exec '${process.execPath}' ${words}`], { encoding: "utf8" });
  expect({ stderr, ...JSON.parse(stdout) }).toEqual({
    stderr: "",
    said: "the registry's file could not be written; nothing was committed",
    state: { batch: 1, erasures: 0 },
    hash: contentHash,
  });
  await expectToWorkAgain(folder, after);
});

test("a registry that may only be read: a clear message, nothing written", async () => {
  const { folder, contentHash, after } = await oneBatch();
  const db = openRegistryFile(folder);
  db.pragma("query_only = ON");
  expect(() => inTransaction(db, () => commitRows(db, manyRows(2000), { at }, noCheck))).toThrow(
    "the registry's file could not be written; nothing was committed",
  );
  closeRegistryFile(db);
  const registry = await openRegistry(folder);
  expect(await registry.contentHash()).toBe(contentHash);
  await registry.close();
  await expectToWorkAgain(folder, after);
});
