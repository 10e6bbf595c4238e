import { readFileSync } from "node:fs";
import path from "node:path";
import { type FileRead, type Finding, type Mapping, parseMapping, readFile, type Sheet } from "@/lib/intake";
import { UsageError } from "../arguments";

export type ReadFiles = {
  readonly sheets: readonly Sheet[];
  readonly findings: readonly Finding[];
  readonly filesRefused: number;
  /** Sheets of workbooks that were passed over, each as `log.xlsx · Read me`. */
  readonly skipped: readonly string[];
};

/** Read every file of the call; one that is refused leaves its finding. @throws UsageError when a file isn't there */
export async function readFiles(files: readonly string[]): Promise<ReadFiles> {
  const read: { readonly name: string; readonly file: FileRead }[] = [];
  for (const file of files) {
    const name = path.basename(file);
    read.push({ name, file: await readFile(bytesOf(file), { file: name }) });
  }
  return {
    sheets: read.flatMap(({ file }) => file.sheets),
    findings: read.flatMap(({ file }) => file.findings),
    filesRefused: read.filter(({ file }) => file.sheets.length === 0).length,
    skipped: read.flatMap(({ name, file }) => file.skipped.map(({ sheet }) => `${name} · ${sheet}`)),
  };
}

function bytesOf(file: string): Uint8Array {
  try {
    return readFileSync(file);
  } catch {
    throw new UsageError("intake requires files that can be read; one of those named can't");
  }
}

/** What the options of the call say of a mapping, over what it says itself. */
export function withOptions(mapping: Mapping, { dates, decimal }: Pick<Mapping, "dates" | "decimal">): Mapping {
  return { ...mapping, dates: dates ?? mapping.dates, decimal: decimal ?? mapping.decimal };
}

/** The mapping of a file that the call names. @throws UsageError */
export function readMapping(file: string): Mapping {
  try {
    return parseMapping(JSON.parse(readFileSync(file, "utf8")));
  } catch (error) {
    throw new UsageError(error instanceof TypeError ? error.message : "--mapping requires a file of JSON that can be read");
  }
}
