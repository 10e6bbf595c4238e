import { mkdtempSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import path from "node:path";
import { startServer } from "@/lib/cli/setup/serve.mjs";
import type { UnitKeyRecord } from "@/lib/intake";
import { inRegistry } from "../../integration/in-registry";

/** A registry of a test's own, served on a free port. */
export type OwnRegistry = {
  readonly address: string;
  readonly data: string;
  readonly stop: () => Promise<void>;
  /** The end of what the server printed. */
  readonly log: () => string;
};

/** An empty registry; with a key, one whose unit has its key and has brought nothing in yet. */
export async function ownRegistry(unitKey: UnitKeyRecord | null = null): Promise<OwnRegistry> {
  const folder = mkdtempSync(path.join(tmpdir(), "lengthbook-intake-"));
  const data = path.join(folder, "registry");
  if (unitKey) await inRegistry(data, (registry) => registry.saveUnitKey(unitKey));
  const { child, address, ended, output } = await startServer({ data, port: await freePort() });
  const stop = async () => {
    child.kill("SIGTERM");
    await ended;
    rmSync(folder, { recursive: true });
  };
  return { address, data, stop, log: output };
}

export function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once("error", reject);
    probe.listen(0, "127.0.0.1", () => {
      const address = probe.address();
      probe.close(() => (typeof address === "object" && address ? resolve(address.port) : reject(new Error("no port was given"))));
    });
  });
}
