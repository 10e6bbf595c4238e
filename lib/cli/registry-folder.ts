import path from "node:path";
import { openRegistry, type Registry } from "@/lib/registry";

/** The folder of the registry in hand: `LENGTHBOOK_DATA`, or `.data/registry` here. */
export function registryFolder(): string {
  return path.resolve(process.env.LENGTHBOOK_DATA ?? ".data/registry");
}

/** Open the registry for one command and close it after, whatever happens. */
export async function withRegistry<T>(work: (registry: Registry) => Promise<T>): Promise<T> {
  const registry = await openRegistry(registryFolder(), { create: true });
  try {
    return await work(registry);
  } finally {
    await registry.close();
  }
}
