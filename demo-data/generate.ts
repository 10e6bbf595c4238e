import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { demoFiles } from "./files";

// Writes every file of the invented unit beside this one. The same seed gives the same bytes.
for (const { name, bytes } of demoFiles()) writeFileSync(join(import.meta.dirname, name), bytes);
