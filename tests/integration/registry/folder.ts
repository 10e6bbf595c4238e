import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach } from "vitest";
import { type Check, defaultSettings, openRegistry, type Registry, type Settings } from "@/lib/registry";

const made: { folder: string; registry: Registry }[] = [];

/** Most tests are of the registry, not of intake's check. */
export const noCheck: Check = () => [];

export const at = "2026-01-31T09:30:00Z";

/** A unit with a second house and a score. */
export const ourLists: Settings = {
  ...defaultSettings,
  units: ["unit-1", "north"],
  scores: [{ code: "a-score", range: [0, 100], direction: "higher", minimalDifference: null }],
};

/** A registry in a folder of its own, gone after the test. */
export async function fresh(check: Check = noCheck): Promise<Registry & { readonly folder: string }> {
  const folder = mkdtempSync(join(tmpdir(), "lengthbook-registry-"));
  const registry = await openRegistry(folder, { create: true, check });
  made.push({ folder, registry });
  return { ...registry, folder };
}

/** The same, its first batch the unit's lists. */
export async function freshWithLists(check: Check = noCheck): Promise<Registry & { readonly folder: string }> {
  const registry = await fresh(check);
  await registry.saveSettings(ourLists, { at });
  return registry;
}

afterEach(async () => {
  for (const { folder, registry } of made.splice(0)) {
    await registry.close();
    rmSync(folder, { recursive: true, force: true });
  }
});

/** Every row held now, by table. */
export async function heldBy(registry: Registry): Promise<{ readonly table: string; readonly row: object }[]> {
  const rows: { table: string; row: object }[] = [];
  for await (const held of registry.held()) rows.push(held);
  return rows;
}
