import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import path from "node:path";
import type { TestProject } from "vitest/node";
import { build } from "@/lib/cli/setup/build.mjs";
import { startServer } from "@/lib/cli/setup/serve.mjs";
import { lengthbook } from "./lengthbook";

declare module "vitest" {
  interface ProvidedContext {
    /** Address of a registry that holds the invented unit, and its folder. */
    readonly filled: { readonly address: string; readonly data: string };
    /** The same unit with all that it measured: body measures, visits and scores too. */
    readonly whole: { readonly address: string; readonly data: string };
    /** Address of a registry into which nothing has been brought. */
    readonly empty: { readonly address: string; readonly data: string };
    /** Another such, for tests that bring in and take back; its folder holds the passphrase. */
    readonly changing: { readonly address: string; readonly data: string; readonly passphrase: string };
    /** Address of a registry whose file is none. */
    readonly broken: { readonly address: string; readonly data: string };
  }
}

const passphrase = "invented unit, open key";

/** Builds the pages unless nothing changed, brings the invented unit in by the command line, and serves five registries on free ports. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  await build();
  const folder = mkdtempSync(path.join(tmpdir(), "lengthbook-browser-"));
  const secret = path.join(folder, "passphrase.txt");
  writeFileSync(secret, `${passphrase}\n`, { mode: 0o600 });
  const filledData = path.join(folder, "filled");
  await lengthbook(filledData, ["intake", "demo-data/seven-years.csv", "--dates", "ymd", "--passphrase-file", secret, "--json"]);
  const wholeData = path.join(folder, "whole");
  await lengthbook(wholeData, ["settings", "--set", "demo-data/settings.json"]);
  for (const sheet of ["seven-years", "tables/body-measures", "tables/visits", "tables/scores"])
    await lengthbook(wholeData, ["intake", `demo-data/${sheet}.csv`, "--dates", "ymd", "--passphrase-file", secret, "--json"]);
  const brokenData = path.join(folder, "broken");
  mkdirSync(brokenData, { mode: 0o700 });
  writeFileSync(path.join(brokenData, "registry.sqlite"), "this is no registry\n".repeat(100), { mode: 0o600 });
  const servers = await Promise.all(
    [filledData, wholeData, path.join(folder, "empty"), path.join(folder, "changing"), brokenData].map(serve),
  );
  const [filled, whole, empty, changing, broken] = servers;
  if (!filled || !whole || !empty || !changing || !broken) throw new Error("five servers were started and one of them is not there");
  project.provide("filled", { address: filled.address, data: filled.data });
  project.provide("whole", { address: whole.address, data: whole.data });
  project.provide("empty", { address: empty.address, data: empty.data });
  project.provide("changing", { address: changing.address, data: changing.data, passphrase: secret });
  project.provide("broken", { address: broken.address, data: broken.data });
  return async () => {
    await Promise.all(servers.map(({ stop }) => stop()));
    rmSync(folder, { recursive: true });
  };
}

async function serve(data: string) {
  const { child, address, ended } = await startServer({ data, port: await freePort() });
  const stop = async () => {
    child.kill("SIGTERM");
    await ended;
  };
  return { address, data, stop };
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once("error", reject);
    probe.listen(0, "127.0.0.1", () => {
      const address = probe.address();
      probe.close(() => (typeof address === "object" && address ? resolve(address.port) : reject(new Error("no port was given"))));
    });
  });
}
