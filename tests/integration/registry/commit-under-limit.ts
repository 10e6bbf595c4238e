import { writeSync } from "node:fs";
import { NothingCommitted, openRegistry } from "@/lib/registry";
import { manyRows } from "./rows";

// The child of the full-disk test: its shell lets no file grow beyond a size. It says what the commit was refused with, and what is held after.
const [folder = "", persons = "0"] = process.argv.slice(2);
const registry = await openRegistry(folder, { check: () => [] });
const error: unknown = await registry.commit(manyRows(Number(persons)), { at: "2026-02-01T00:00:00Z" }).catch((reason: unknown) => reason);
const said = error instanceof NothingCommitted ? error.message : `not refused as it should be: ${String(error)}`;
writeSync(1, JSON.stringify({ said, state: await registry.state(), hash: await registry.contentHash() }));
await registry.close();
