import type { Registry, State } from "@/lib/registry";

/** The registry's state, or the state as of an earlier batch. @throws RangeError when there is no such batch */
export async function stateAsOf(registry: Registry, batch?: number): Promise<State> {
  const now = await registry.state();
  if (batch === undefined) return now;
  if (!Number.isInteger(batch) || batch < 0 || batch > now.batch)
    throw new RangeError(`an answer requires a batch from 0 to ${now.batch}, received ${batch}`);
  return { ...now, batch };
}
