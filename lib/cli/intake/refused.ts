import { writeFileSync } from "node:fs";
import path from "node:path";
import { counted } from "@/lib/charts";
import type { RefusedFile } from "@/lib/intake";

/**
 * Writes the rows set aside, readable by their owner alone: the first sheet's as FILE, those of further sheets as FILE-2, FILE-3 …
 * @returns what was written where, in words
 */
export function writeRefused(file: string, refused: readonly RefusedFile[]): readonly string[] {
  // with nothing set aside the file is there and blank: a job that looks for it finds the answer of this call, not of the last
  const files = refused.length > 0 ? refused : [{ file: "", rows: 0, csv: "" }];
  return files.map(({ file: from, rows, csv }, i) => {
    const where = i === 0 ? file : numbered(file, i + 1);
    writeFileSync(where, csv, { mode: 0o600 });
    return rows === 0
      ? `no row was set aside: ${where} is blank`
      : `${counted(rows, "row")} set aside of ${from}: ${where} (holds names and numbers)`;
  });
}

/** @example numbered("/tmp/refused.csv", 2) // => "/tmp/refused-2.csv" */
function numbered(file: string, n: number): string {
  const { dir, name, ext } = path.parse(file);
  return path.join(dir, `${name}-${n}${ext}`);
}
