import { writeSync } from "node:fs";
import { openRegistry } from "@/lib/registry";
import { aPerson, aSegment, rowsOf } from "./rows";

// The child of the kill test: commits many rows, saying on its standard output when it starts and when it is done.
const [folder = "", persons = "0"] = process.argv.slice(2);
const people = Array.from({ length: Number(persons) }, (_, i) => i + 10);
const rows = rowsOf({ person: people.map((n) => aPerson(n)), segment: people.map((n) => aSegment(n, { gainMm: 50 })) });
const registry = await openRegistry(folder, { check: () => [] });
writeSync(1, "started\n");
await registry.commit(rows, { at: "2026-02-01T00:00:00Z" });
writeSync(1, "done\n");
