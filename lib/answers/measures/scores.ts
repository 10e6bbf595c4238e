import type { MeasureOptions } from "@/lib/outcomes";
import type { Registry, State } from "@/lib/registry";
import { columnOf, valueAt } from "../frames/read";
import type { Group } from "../healing/groups";

export type AskedGroup = { readonly group: Group; readonly options: MeasureOptions };

/** A measure of scores without a code answers each code held, as a field `score` of the group's key; every other measure stays as it is. */
export async function withScores(
  registry: Registry,
  state: State,
  { id }: { readonly id: string },
  groups: readonly Group[],
  options: MeasureOptions,
): Promise<readonly AskedGroup[]> {
  if (!id.startsWith("score-")) return groups.map((group) => ({ group, options }));
  const { scores } = await registry.settings(state.batch);
  const codes = options.scoreCode === null ? await codesHeld(registry, state) : [options.scoreCode];
  return groups.flatMap((group) =>
    codes.map((code) => {
      const rule = scores.find((score) => score.code === code);
      const own: MeasureOptions = {
        ...options,
        scoreCode: code,
        scoreBetter: rule?.direction ?? null,
        scoreMinimalDifference: rule?.minimalDifference ?? null,
      };
      if (options.scoreCode !== null) return { group, options: own };
      return { group: { ...group, key: { ...group.key, score: code }, label: `${group.label}, ${code}` }, options: own };
    }),
  );
}

async function codesHeld(registry: Registry, state: State): Promise<readonly string[]> {
  const frame = await registry.frameAsOf(state, "score", ["scoreCode"]);
  const codes = new Set<string>();
  for (let row = 0; row < frame.length; row++) codes.add(String(valueAt(columnOf(frame, "scoreCode"), row)));
  return [...codes].sort();
}
