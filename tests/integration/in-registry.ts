import { openRegistry, type Registry } from "@/lib/registry";

/** Opens the registry of a folder, beside a server or command line that uses it too, for one look. */
export async function inRegistry<T>(data: string, look: (registry: Registry) => Promise<T>): Promise<T> {
  const registry = await openRegistry(data, { create: true });
  try {
    return await look(registry);
  } finally {
    await registry.close();
  }
}
