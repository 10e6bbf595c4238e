import { writeSync } from "node:fs";
import { openRegistry } from "@/lib/registry";
import { manyRows } from "./rows";

// The child of the kill test: commits many rows, saying on its standard output when it starts and when it is done.
const [folder = "", persons = "0"] = process.argv.slice(2);
const rows = manyRows(Number(persons));
const registry = await openRegistry(folder, { check: () => [] });
writeSync(1, "started\n");
await registry.commit(rows, { at: "2026-02-01T00:00:00Z" });
writeSync(1, "done\n");
