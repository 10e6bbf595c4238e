import { execFile } from "node:child_process";
import path from "node:path";
import { promisify } from "node:util";
import { commandLine } from "../command-line";

const run = promisify(execFile);
const root = path.resolve(import.meta.dirname, "../..");

/** Runs a command of Lengthbook on the registry of a folder; answers with what it printed. */
export async function lengthbook(data: string, words: readonly string[]): Promise<string> {
  const env = { ...process.env, LENGTHBOOK_DATA: data };
  const { stdout } = await run(process.execPath, [commandLine, ...words], { cwd: root, env, maxBuffer: 64e6 });
  return stdout;
}
