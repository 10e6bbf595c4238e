import { clocksAsOf, measureList } from "@/lib/answers";
import type { Registry } from "@/lib/registry";
import { UsageError } from "./arguments";

/** @throws UsageError when neither the house nor the unit's settings have the measure */
export async function requireMeasure(registry: Registry, id: string, verb: string): Promise<void> {
  const list = measureList(await clocksAsOf(registry));
  if (!list.some((entry) => entry.id === id || id.startsWith(`${entry.id}.`)))
    throw new UsageError(`${verb} requires an id of measure --list`);
}
