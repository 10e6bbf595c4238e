import { readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { emptyMapping, type Finding, type Mapping, parseMapping, readSheet, type Sheet } from "@/lib/intake";
import { UsageError } from "../arguments";

export type ReadFiles = { readonly sheets: readonly Sheet[]; readonly findings: readonly Finding[]; readonly filesRefused: number };

/** Read every file of the call; one that is refused leaves its finding. @throws UsageError when a file isn't there */
export function readSheets(files: readonly string[]): ReadFiles {
  const read = files.map((file) => readSheet(bytesOf(file), { file: path.basename(file) }));
  return {
    sheets: read.flatMap(({ sheet }) => (sheet ? [sheet] : [])),
    findings: read.flatMap(({ findings }) => findings),
    filesRefused: read.filter(({ sheet }) => sheet === null).length,
  };
}

function bytesOf(file: string): Uint8Array {
  try {
    return readFileSync(file);
  } catch {
    throw new UsageError("intake requires files that can be read; one of those named can't");
  }
}

/** The mapping of the call: the file's, and over it what the options say. @throws UsageError */
export function mappingFor(file: string | undefined, { dates, decimal }: Pick<Mapping, "dates" | "decimal">): Mapping {
  const base = file === undefined ? emptyMapping : readMapping(file);
  return { ...base, dates: dates ?? base.dates, decimal: decimal ?? base.decimal };
}

function readMapping(file: string): Mapping {
  try {
    return parseMapping(JSON.parse(readFileSync(file, "utf8")));
  } catch (error) {
    throw new UsageError(error instanceof TypeError ? error.message : "--mapping requires a file of JSON that can be read");
  }
}

export function saveMapping(file: string, mapping: Mapping): void {
  writeFileSync(file, `${JSON.stringify(mapping, null, 2)}\n`, { mode: 0o600 });
}
