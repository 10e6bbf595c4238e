import { existsSync, writeFileSync } from "node:fs";
import path from "node:path";
import { hashOf, quietly, root, stampOf, step } from "./run.mjs";

const stampFile = ".next/.setup-stamp";
const sources = ["package-lock.json", "next.config.js", "tsconfig.json", "proxy.ts", "app", "lib", "db"];

/** Build the pages, unless nothing that they are made of has changed. */
export async function build() {
  const stamp = hashOf(sources);
  if (stampOf(stampFile) === stamp && existsSync(path.join(root, ".next/BUILD_ID"))) return;
  await step("Building the pages", () => quietly(process.execPath, ["node_modules/next/dist/bin/next", "build"]));
  writeFileSync(path.join(root, stampFile), stamp);
}
