import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { ddl } from "./ddl";

writeFileSync(join(import.meta.dirname, "migrations", "0001.sql"), ddl());
