import { spawn } from "node:child_process";
import { accessSync, constants, mkdtempSync, readFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { environment, quietly, root, step } from "./run.mjs";

const rPackages = ["r-base-core", "r-cran-survival", "r-cran-clubsandwich", "r-cran-sandwich", "r-cran-jsonlite"];
const rExtras = ["r-cran-metafor", "r-cran-boot", "r-cran-cmprsk", "r-cran-geepack", "r-cran-epitools"];

function find(command) {
  for (const folder of (process.env.PATH ?? "").split(path.delimiter)) {
    try {
      accessSync(path.join(folder, command), constants.X_OK);
      return true;
    } catch {}
  }
  return false;
}

const mayInstall = () => find("apt-get") && process.getuid?.() === 0;

async function aptInstall(words, packages) {
  const env = { ...environment, DEBIAN_FRONTEND: "noninteractive" };
  await step(words, async () => {
    await quietly("apt-get", ["update", "-qq"], { env });
    await quietly("apt-get", ["install", "-y", "-qq", "--no-install-recommends", ...packages], { env });
  });
}

async function needChromium() {
  if (find("chromium")) return;
  if (!mayInstall()) throw new Error("The browser tests require chromium; install Debian's package chromium and try again");
  await aptInstall("Installing Debian's chromium for the browser tests", ["chromium"]);
}

async function wantR() {
  if (find("Rscript") || !mayInstall()) return;
  await aptInstall("Installing R for the outside comparisons", [...rPackages, ...rExtras]).catch(() => {});
}

function run(args) {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, args, { cwd: root, env: environment, stdio: ["ignore", "inherit", "inherit"] });
    child.on("close", (code) => resolve(code ?? 1));
  });
}

const checks = [
  ["types", ["node_modules/typescript/bin/tsc", "--noEmit"]],
  ["types of the rooms that run anywhere", ["node_modules/typescript/bin/tsc", "--noEmit", "-p", "tests/tsconfig.anywhere.json"]],
  ["lint", ["node_modules/@biomejs/biome/bin/biome", "check", "--diagnostic-level=error"]],
];

/** Types, lint, then every test; the last line counts them. */
export async function runTests(args) {
  await needChromium();
  await wantR();
  const count = { passed: 0, failed: 0, skipped: 0 };
  if (args.length === 0) {
    for (const [name, command] of checks) {
      const ok = (await run(command)) === 0;
      console.log(`${name}: ${ok ? "passed" : "FAILED"}`);
      count[ok ? "passed" : "failed"]++;
    }
  }
  const report = path.join(mkdtempSync(path.join(tmpdir(), "lengthbook-tests-")), "report.json");
  const reporters = ["--reporter=default", "--reporter=json", `--outputFile.json=${report}`];
  const asked = args.length > 0 ? args : ["unit", "integration", "browser"].map((name) => `--project=${name}`);
  const code = await run(["node_modules/vitest/vitest.mjs", "run", ...reporters, ...asked]);
  const result = JSON.parse(readFileSync(report, "utf8"));
  count.passed += result.numPassedTests;
  count.failed += result.numFailedTests;
  count.skipped += result.numPendingTests + result.numTodoTests;
  // a file that failed to load, or an error outside any test, has no test to count
  if (code !== 0 && count.failed === 0) count.failed = 1;
  if (!find("Rscript"))
    console.log("\nTHE OUTSIDE COMPARISONS WITH R DID NOT RUN: there is no R on this machine (Debian: r-base-core and r-cran-…).");
  console.log(`\n${count.passed} passed, ${count.failed} failed, ${count.skipped} skipped`);
  return count.failed === 0 && code === 0 ? 0 : 1;
}
