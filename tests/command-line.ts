import path from "node:path";
import { build } from "esbuild";

const root = path.resolve(import.meta.dirname, "..");
const folder = path.join(root, "node_modules/.lengthbook-tests");

/** The command line as one file: a command starts in a third of the time that it takes through TypeScript, and tests run hundreds. */
export const commandLine = path.join(folder, "main.mjs");

/** Set-up of the projects that run commands: the command line, and its thread that commits beside it. */
export async function setup(): Promise<void> {
  await build({
    absWorkingDir: root,
    entryPoints: { main: "lib/cli/main.ts", "start-worker": "lib/registry/background/commit-worker.ts" },
    outdir: folder,
    outExtension: { ".js": ".mjs" },
    bundle: true,
    packages: "external",
    platform: "node",
    format: "esm",
    logLevel: "error",
  });
}
