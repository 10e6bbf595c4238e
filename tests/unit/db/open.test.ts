import { chmodSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Database from "better-sqlite3";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { RegistryNotOpened } from "@/db/errors";
import { type Connection, closeRegistryFile, openRegistryFile } from "@/db/open";
import { requireSqlite } from "@/db/sqlite-version";

let folder = "";
const opened: Connection[] = [];
const open = (at = folder, options = { create: true }) => {
  const db = openRegistryFile(at, options);
  opened.push(db);
  return db;
};
const modeOf = (path: string) => (statSync(path).mode & 0o777).toString(8);
/** Why a folder is not opened. */
function troubleOf(at = folder, options = { create: true }): string {
  try {
    open(at, options);
  } catch (error) {
    if (error instanceof RegistryNotOpened) return `${error.trouble}: ${error.message}`;
    throw error;
  }
  throw new Error("it was opened");
}

/** In a folder that may be read and not written. Root may write anywhere, so then the step is taken as another user. */
function asSomebodyElse(act: () => void): void {
  const root = process.geteuid?.() === 0;
  chmodSync(folder, root ? 0o755 : 0o500);
  if (root) process.seteuid?.(65_534);
  try {
    act();
  } finally {
    if (root) process.seteuid?.(0);
    chmodSync(folder, 0o700);
  }
}

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "lengthbook-open-"));
});
afterEach(() => {
  for (const db of opened.splice(0)) closeRegistryFile(db);
  rmSync(folder, { recursive: true, force: true });
});

describe("pragmas", () => {
  test.each([
    ["journal_mode", "wal"],
    ["synchronous", 2],
    ["foreign_keys", 1],
    ["recursive_triggers", 1],
    ["secure_delete", 1],
    ["busy_timeout", 5000],
    ["trusted_schema", 0],
    ["cell_size_check", 1],
    ["temp_store", 2],
    ["mmap_size", 0],
    ["cache_size", -32768],
    ["user_version", 2],
  ])("%s reads back as %s, at the first opening and at the next", (name, value) => {
    expect(open().pragma(name, { simple: true })).toBe(value);
    for (const db of opened.splice(0)) closeRegistryFile(db);
    expect(open().pragma(name, { simple: true })).toBe(value);
  });
});

describe("SQLite's version", () => {
  test.each(["3.51.2", "3.50.9", "2.99.99", "", "three"])("%s is refused", (version) => {
    expect(() => requireSqlite(version)).toThrow(`the registry requires SQLite 3.51.3 or newer, received ${version}`);
  });
  test.each(["3.51.3", "3.51.10", "3.52.0", "3.53.2", "4.0.0"])("%s is taken", (version) => {
    expect(requireSqlite(version)).toBeUndefined();
  });
});

describe("the folder", () => {
  test("is made for its owner alone, and so are the files", () => {
    const deep = join(folder, "one", "two");
    open(deep);
    expect([modeOf(deep), ...readdirSync(deep).map((file) => `${file} ${modeOf(join(deep, file))}`)]).toEqual([
      "700",
      "registry.sqlite 600",
      "registry.sqlite-shm 600",
      "registry.sqlite-wal 600",
    ]);
  });

  test("is closed to others when it was open to them and holds a registry, or nothing", () => {
    chmodSync(folder, 0o755);
    closeRegistryFile(open());
    expect(modeOf(folder)).toBe("700");
    chmodSync(folder, 0o755);
    chmodSync(join(folder, "registry.sqlite"), 0o644);
    open();
    expect([modeOf(folder), modeOf(join(folder, "registry.sqlite"))]).toEqual(["700", "600"]);
  });

  test("is left alone when other people use it and it holds something else", () => {
    const shared = join(folder, "shared");
    mkdirSync(shared);
    chmodSync(shared, 0o755);
    writeFileSync(join(shared, "letter.txt"), "");
    expect(troubleOf(shared)).toBe(`folder-shared: the registry requires a folder of its own, received ${shared} with other files in it`);
    expect(modeOf(shared)).toBe("755");
  });

  test("without a registry is an error unless one is to be made, and stays empty", () => {
    expect(troubleOf(folder, { create: false })).toBe(`no-registry: no registry in ${folder}`);
    expect(troubleOf(join(folder, "nowhere"), { create: false })).toBe(`no-registry: no registry in ${join(folder, "nowhere")}`);
    expect(readdirSync(folder)).toEqual([]);
  });

  test("that can't be written to, or is a file, gives a clear error", () => {
    const refusal = (at: string) => `folder-not-writable: the registry requires a folder that it owns and can write to, received ${at}`;
    const file = join(folder, "file");
    writeFileSync(file, "");
    expect(troubleOf(file)).toBe(refusal(file));
    rmSync(file);
    asSomebodyElse(() => {
      expect(troubleOf()).toBe(refusal(folder));
      expect(troubleOf(join(folder, "below"))).toBe(refusal(join(folder, "below")));
    });
    expect(readdirSync(folder)).toEqual([]);
  });

  test("that can be read but not written gives a clear error when it holds a registry", () => {
    closeRegistryFile(open());
    asSomebodyElse(() => expect(troubleOf()).toContain("folder-not-writable: the registry requires a"));
  });
});

describe("the file", () => {
  const path = () => join(folder, "registry.sqlite");

  test("that is no database is refused and stays as it was", () => {
    writeFileSync(path(), "%PDF-1.7 a report, not a registry, but long enough to have a header of a hundred bytes".repeat(3));
    expect(troubleOf()).toBe(`not-a-registry: ${path()} is not a registry: it is no SQLite database, or a damaged one`);
    expect(readdirSync(folder)).toEqual(["registry.sqlite"]);
  });

  test("of another program is refused and stays as it was", () => {
    const other = new Database(path());
    other.exec("CREATE TABLE letter (line TEXT)");
    other.close();
    const before = statSync(path()).size;
    expect(troubleOf()).toBe(`not-a-registry: ${path()} is a database of another program, not a registry`);
    expect(statSync(path()).size).toBe(before);
  });

  test("that is damaged is refused and stays as it was", () => {
    const db = open();
    db.exec("CREATE TABLE filler (line TEXT)");
    const insert = db.prepare("INSERT INTO filler VALUES (?)");
    for (let i = 0; i < 200; i++) insert.run("x".repeat(500));
    closeRegistryFile(db);
    const whole = readFileSync(path());
    // a page in the middle of the file, as a failing disk would leave it
    const hurt = Buffer.from(whole);
    hurt.fill(0xa5, whole.length - 4096 * 10, whole.length - 4096 * 9);
    writeFileSync(path(), hurt);
    expect(troubleOf()).toBe(`damaged: ${path()} is damaged; nothing was written to it. Put it aside and restore a backup`);
    expect(readFileSync(path()).equals(hurt)).toBe(true);
    // the backup, put back
    writeFileSync(path(), whole);
    expect(open().pragma("quick_check", { simple: true })).toBe("ok");
  });

  test("of a newer version is refused", () => {
    const db = open();
    db.pragma("user_version = 9999");
    closeRegistryFile(db);
    expect(troubleOf()).toBe("newer-registry: migrate requires a registry of version 2 or older, received version 9999");
  });

  test("that another process is writing for longer than one can wait is told as busy", () => {
    const db = open();
    db.pragma("user_version = 0");
    db.exec("BEGIN IMMEDIATE");
    expect(troubleOf()).toBe(`busy: ${path()} is being written by another process`);
    db.exec("ROLLBACK");
  }, 15_000);

  test("is alone in its folder once closed, and may be closed twice", () => {
    const db = open();
    closeRegistryFile(db);
    closeRegistryFile(db);
    expect(readdirSync(folder)).toEqual(["registry.sqlite"]);
    expect(existsSync(`${path()}-wal`)).toBe(false);
  });
});
