import { spawn } from "node:child_process";
import { createHash } from "node:crypto";
import { readdirSync, readFileSync, statSync } from "node:fs";
import path from "node:path";

export const root = path.resolve(import.meta.dirname, "../../..");
export const environment = { ...process.env, NEXT_TELEMETRY_DISABLED: "1" };

/** Say a step and how long it took; a step shorter than a second is not worth a line. */
export async function step(words, work) {
  const start = process.hrtime.bigint();
  process.stdout.write(`${words} … `);
  const result = await work();
  process.stdout.write(`done (${(Number(process.hrtime.bigint() - start) / 1e9).toFixed(0)} s)\n`);
  return result;
}

/** Run a command to its end in silence; its output is shown only when it fails. */
export function quietly(command, args, options = {}) {
  return new Promise((resolve, reject) => {
    const child = spawn(command, args, { cwd: root, env: environment, stdio: ["ignore", "pipe", "pipe"], ...options });
    const chunks = [];
    child.stdout.on("data", (chunk) => chunks.push(chunk));
    child.stderr.on("data", (chunk) => chunks.push(chunk));
    child.on("error", reject);
    child.on("close", (code) => {
      const output = Buffer.concat(chunks).toString();
      if (code === 0) resolve(output);
      else reject(new Error(`${command} ${args.join(" ")} ended with ${code}:\n${output.slice(-6000)}`));
    });
  });
}

/** SHA-256 over files and folders of the project, by path and content. */
export function hashOf(names) {
  const hash = createHash("sha256");
  const add = (name) => {
    const file = path.join(root, name);
    const stat = statSync(file, { throwIfNoEntry: false });
    if (!stat) return;
    if (stat.isDirectory()) for (const entry of readdirSync(file).sort()) add(path.join(name, entry));
    else hash.update(name).update("\0").update(readFileSync(file)).update("\0");
  };
  for (const name of names) add(name);
  return hash.digest("hex");
}

export function stampOf(file) {
  try {
    return readFileSync(path.join(root, file), "utf8");
  } catch {
    return null;
  }
}
