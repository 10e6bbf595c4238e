import { existsSync, mkdirSync, renameSync, writeFileSync } from "node:fs";
import path from "node:path";
import { environment, hashOf, quietly, root, stampOf, step } from "./run.mjs";

const folder = ".data/demo";
const stampFile = `${folder}/.seed-stamp`;
const settingsFile = "demo-data/settings.json";
const seedFiles = [
  "demo-data/seven-years.csv",
  "demo-data/tables/body-measures.csv",
  "demo-data/tables/visits.csv",
  "demo-data/tables/scores.csv",
];

/** Bring the invented unit's seven years into the demo registry, by the same command that brings in a real sheet. */
export async function seedDemo() {
  const stamp = hashOf([...seedFiles, settingsFile, "db/migrations"]);
  if (stampOf(stampFile) === stamp) return;
  const data = path.join(root, folder);
  // a demo registry of an earlier version is put aside, not removed: somebody may have worked in it
  if (existsSync(data)) renameSync(data, `${data}-${new Date().toISOString().replaceAll(/[:.]/g, "-")}`);
  mkdirSync(data, { recursive: true, mode: 0o700 });
  await step("Bringing the invented demo cases in", async () => {
    await lengthbook(data, ["settings", "--set", settingsFile]);
    const passphrase = ["--passphrase-file", "demo-data/passphrase.txt"];
    for (const file of seedFiles) await lengthbook(data, ["intake", file, "--dates", "ymd", ...passphrase, "--json"]);
  });
  writeFileSync(path.join(root, stampFile), stamp);
}

function lengthbook(data, args) {
  const env = { ...environment, LENGTHBOOK_DATA: data };
  return quietly(process.execPath, ["--import", "tsx", "lib/cli/main.ts", ...args], { env });
}
