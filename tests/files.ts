import { readdirSync } from "node:fs";
import path from "node:path";

/** Files below a folder whose name ends so, sorted (Node 20 has no glob of its own). */
export function filesBelow(folder: string, ending: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith(ending))
    .map((entry) => path.join(entry.parentPath, entry.name))
    .sort();
}
