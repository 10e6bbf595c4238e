import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";

// Convention: NAME.R prints one JSON object { answer id: { field: value } } on stdout and nothing else;
// NAME.json keeps { script: SHA-256 of NAME.R, answers: that object }. `npm run answers [NAME …]` writes it again.

export type Answer = number | string | boolean | null | readonly Answer[] | { readonly [field: string]: Answer };
export type Answers = Readonly<Record<string, Answer>>;
export type Stored = { readonly script: string; readonly answers: Answers };

const folder = import.meta.dirname;

/** Names of the R scripts of this folder whose answers are kept. */
export function scriptNames(): readonly string[] {
  return readdirSync(folder)
    .filter((file) => file.endsWith(".R"))
    .map((file) => file.slice(0, -2))
    .filter((name) => existsSync(join(folder, `${name}.json`)))
    .sort();
}

export function storedAnswers(name: string): Stored {
  const path = join(folder, `${name}.json`);
  if (!existsSync(path)) throw new RangeError(`storedAnswers requires ${name}.json beside ${name}.R: npm run answers ${name}`);
  return JSON.parse(readFileSync(path, "utf8")) as Stored;
}

/** Ids of a script's stored answers. */
export function idsOf(name: string): readonly string[] {
  return Object.keys(storedAnswers(name).answers);
}

/** SHA-256 of the script as it stands now, with what it sources. */
export function fingerprint(name: string): string {
  const script = readFileSync(join(folder, `${name}.R`), "utf8");
  const sourced = [...script.matchAll(/^source\("([\w-]+\.R)"\)/gm)].map(([, file]) => readFileSync(join(folder, file as string), "utf8"));
  return createHash("sha256")
    .update([script, ...sourced].join(""))
    .digest("hex");
}

export function hasR(): boolean {
  return spawnSync("Rscript", ["--version"]).status === 0;
}

/** Runs the script in this folder. @throws Error with R's own message when it fails */
export function runScript(name: string): Answers {
  const run = spawnSync("Rscript", ["--vanilla", `${name}.R`], { cwd: folder, encoding: "utf8", maxBuffer: 64e6 });
  if (run.status !== 0) throw new Error(`${name}.R failed: ${run.stderr.trim()}`);
  return JSON.parse(run.stdout) as Answers;
}

export function storeAnswers(name: string): number {
  const answers = runScript(name);
  const lines = Object.entries(answers).map(([id, answer]) => `${JSON.stringify(id)}:${JSON.stringify(answer)}`);
  const text = `{"script":"${fingerprint(name)}","answers":{\n${lines.join(",\n")}\n}}\n`;
  writeFileSync(join(folder, `${name}.json`), text);
  return lines.length;
}

/** Where two answers differ by more than 1e-8 of their size; a list of sentences, empty when they agree. */
export function differences(stored: Answer, fresh: Answer, at = ""): readonly string[] {
  if (typeof stored === "number" && typeof fresh === "number")
    return Math.abs(stored - fresh) <= 1e-8 * Math.abs(stored) + 1e-12 ? [] : [`${at}: stored ${stored}, R says ${fresh}`];
  if (stored === null || fresh === null || typeof stored !== "object" || typeof fresh !== "object")
    return stored === fresh ? [] : [`${at}: stored ${JSON.stringify(stored)}, R says ${JSON.stringify(fresh)}`];
  const [left, right] = [new Map(Object.entries(stored)), new Map(Object.entries(fresh))];
  const keys = new Set([...left.keys(), ...right.keys()]);
  return [...keys].flatMap((key) => differences(left.get(key) ?? null, right.get(key) ?? null, `${at}/${key}`));
}
