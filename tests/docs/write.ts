import { writeFileSync } from "node:fs";
import { writtenPages } from "./pages";

for (const [file, page] of Object.entries(writtenPages)) writeFileSync(file, page());
