import { mkdirSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { demoFiles } from "./files";

// Writes every file of the invented unit beside this one. The same seed gives the same bytes.
for (const { name, bytes } of demoFiles()) {
  const file = join(import.meta.dirname, name);
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, bytes);
}
