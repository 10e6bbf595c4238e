import { spawnSync } from "node:child_process";
import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { commandLine } from "../../command-line";

export type Ran = { readonly code: number | null; readonly out: string; readonly err: string; readonly json: unknown };

/** A folder for a registry of its own, with a passphrase file beside it. */
export function aUnit() {
  const home = mkdtempSync(path.join(tmpdir(), "lengthbook-cli-"));
  const secret = path.join(home, "secret.txt");
  writeFileSync(secret, "a passphrase of the tests\n");
  const file = (name: string, text: string | Uint8Array) => {
    const where = path.join(home, name);
    writeFileSync(where, text);
    return where;
  };
  return { data: path.join(home, "registry"), secret, file };
}

/** Runs one command of the command line to its end. */
export function lengthbook(data: string, ...args: string[]): Ran {
  const run = spawnSync(process.execPath, [commandLine, ...args], {
    env: { ...process.env, LENGTHBOOK_DATA: data },
    encoding: "utf8",
    maxBuffer: 64e6,
  });
  let json: unknown = null;
  try {
    json = JSON.parse(run.stdout);
  } catch {}
  return { code: run.status, out: run.stdout, err: run.stderr, json };
}
