import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { emptyMapping, keyRing, type Mapping, prepare, readSheet, type StrippedRows, unitKeyOf } from "@/lib/intake";
import { openRegistry, type Registry } from "@/lib/registry";

/** A fixed key: tests don't draw one. */
export const testRing = keyRing(unitKeyOf(new Uint8Array(32).fill(7)));
export const today = { year: 2026, month: 11, day: 25 };

/** The stripped rows of a file of the demo data. @throws Error when something must be asked */
export async function stripped(
  file: string,
  mapping: Mapping = emptyMapping,
  unit: { readonly scores?: readonly string[] } = {},
): Promise<StrippedRows> {
  const { sheet } = readSheet(readFileSync(file), { file: path.basename(file) });
  if (!sheet) throw new Error(`${file} was refused`);
  const { rows, questions } = await prepare({ sheets: [sheet], ring: testRing, today, mapping, ...unit });
  if (questions.length > 0) throw new Error(`${file}: ${questions.map(({ code }) => code).join(", ")} must be answered`);
  return rows;
}

/** An empty registry in a folder of its own. */
export async function emptyRegistry(): Promise<Registry & AsyncDisposable> {
  const folder = mkdtempSync(path.join(tmpdir(), "lengthbook-test-"));
  const registry = await openRegistry(folder, { create: true });
  return {
    ...registry,
    [Symbol.asyncDispose]: async () => {
      await registry.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** A registry that holds the invented unit's seven years. */
export async function demoRegistry(): Promise<Registry & AsyncDisposable> {
  const registry = await emptyRegistry();
  await registry.commit(await stripped("demo-data/seven-years.csv"), { at: "2025-04-01T08:00:00Z" });
  return registry;
}
