import { writeFileSync } from "node:fs";
import path from "node:path";
import { hashOf, quietly, root, stampOf, step } from "./run.mjs";

const stampFile = "node_modules/.setup-stamp";

export function checkNode() {
  const major = Number(process.versions.node.split(".")[0]);
  if (major !== 20) throw new Error(`Lengthbook requires Node 20, received Node ${process.versions.node}`);
}

/** Install the packages of the lock file, unless they stand there already for this Node. */
export async function install() {
  const stamp = `${hashOf(["package-lock.json"])} ${process.versions.modules}`;
  if (stampOf(stampFile) === stamp) return;
  await step("Installing packages (once; the database driver may have to be compiled, about two minutes)", () =>
    quietly("npm", ["ci", "--no-audit", "--no-fund", "--loglevel=error"]),
  );
  writeFileSync(path.join(root, stampFile), stamp);
}
