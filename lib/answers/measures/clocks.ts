import { type IndexDefinition, indexDefinitions, ownIndex } from "@/lib/outcomes";
import type { Registry } from "@/lib/registry";

/** The built-in clocks, then the unit's own indices as its settings held them at a batch. */
export async function clocksAsOf(registry: Registry, batch?: number): Promise<readonly IndexDefinition[]> {
  const { indices } = await registry.settings(batch);
  return [...indexDefinitions, ...indices.map(ownIndex)];
}

/** A clock by its id. @throws RangeError when neither the house nor the unit has one */
export async function clockOf(registry: Registry, batch: number, id: string): Promise<IndexDefinition> {
  const found = (await clocksAsOf(registry, batch)).find((one) => one.id === id);
  if (!found) throw new RangeError("an answer requires the id of a clock, or of an index in the unit's settings, received another");
  return found;
}

/** A built-in clock, or an index of the unit's own. */
export function isClock(id: string): boolean {
  return id.startsWith("own-") || indexDefinitions.some((one) => one.id === id);
}
