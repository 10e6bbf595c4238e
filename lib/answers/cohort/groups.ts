import type { Where } from "@/lib/cohorts";
import type { Registry } from "@/lib/registry";
import { casesOf } from "../frames/cases";
import { fieldsOfSplit, type GroupKey, splitBy } from "../healing/groups";
import { stateAsOf } from "../question/state";

export type CohortGroup = { readonly key: GroupKey; readonly label: string; readonly patients: number; readonly segments: number };

/**
 * Who is in each group of a split. A patient with segments in several groups counts in each.
 * @throws RangeError for a batch that isn't there; CohortError when a field can't be split by
 */
export async function cohortGroups(
  registry: Registry,
  { where, by, asOf }: { readonly where: Where; readonly by: readonly string[]; readonly asOf?: number },
): Promise<readonly CohortGroup[]> {
  const state = await stateAsOf(registry, asOf);
  const cases = await casesOf(registry, state, where, fieldsOfSplit(by));
  return splitBy(cases, by).map((group) => ({
    key: group.key,
    label: group.label,
    patients: new Set(group.cases.map(({ segment }) => segment.person)).size,
    segments: group.cases.length,
  }));
}
