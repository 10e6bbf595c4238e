import { complicationMeasures, endsAtConsolidation, type IndexDefinition, indexDefinitions } from "@/lib/outcomes";
import type { Registry } from "@/lib/registry";
import { holm } from "@/lib/stats";
import { readMeasure } from "../measures/catalogue";
import { clocksAsOf } from "../measures/clocks";
import { type CompareAnswer, type CompareQuestion, compare } from "./compare";
import type { Difference } from "./differences";

export type FamilyQuestion = Omit<CompareQuestion, "measure"> & { readonly measures: readonly string[] };

/** One outcome of the family: as it stands, and adjusted where that was asked and the measure can be. */
export type FamilyMember = {
  readonly measure: string;
  readonly crude: CompareAnswer;
  /** `null`: nothing to adjust for, or the measure is not one that is adjusted. */
  readonly adjusted: CompareAnswer | null;
  /** The estimate by which the outcome is judged: of healing the days at equal gain; adjusted before crude. `null`: not estimable. */
  readonly lead: Difference | null;
  /** p adjusted by Holm over the family; `null` where no p was asked for, or none can be had. */
  readonly holm: number | null;
};
export type FamilyAnswer = {
  readonly members: readonly FamilyMember[] /** How many p values Holm's rule was over. */;
  readonly tested: number;
};

/**
 * Several outcomes of the same two groups: each as it stands and adjusted, p values (where asked for) by Holm over the family.
 * @throws RangeError when no outcome is named, one isn't known, or a segment stands in both groups
 */
export async function compareFamily(registry: Registry, { measures, ...asked }: FamilyQuestion): Promise<FamilyAnswer> {
  if (measures.length === 0) throw new RangeError("compareFamily requires an outcome, received none");
  const members = await Promise.all(measures.map((measure) => memberOf(registry, measure, asked)));
  const tested = members.flatMap(({ lead }, place) => (lead?.p == null ? [] : [{ place, p: lead.p }]));
  const adjusted = tested.length === 0 ? [] : holm({ p: tested.map(({ p }) => p) }).adjusted;
  const holmAt = new Map(tested.map(({ place }, i) => [place, adjusted[i] ?? null]));
  return { members: members.map((member, place) => ({ ...member, holm: holmAt.get(place) ?? null })), tested: tested.length };
}

async function memberOf(registry: Registry, measure: string, asked: Omit<CompareQuestion, "measure">): Promise<Omit<FamilyMember, "holm">> {
  const { adjust = [], ...plain } = asked;
  const crude = await compare(registry, { ...plain, measure });
  const adjusted =
    adjust.length > 0 && canBeAdjusted(measure, await clocksAsOf(registry, asked.asOf))
      ? await compare(registry, { ...plain, measure, adjust })
      : null;
  const lead = [leadOf(adjusted), leadOf(crude)].find((one) => one !== null && one.estimate !== null) ?? null;
  return { measure, crude, adjusted, lead };
}

/** The first difference leads: of healing that is the ratio at equal gain, of shares the risk difference. */
function leadOf(answer: CompareAnswer | null): Difference | null {
  return answer?.differences[0] ?? null;
}

/** Healing per length, shares and rates; of other measures nothing is adjusted. */
export function canBeAdjusted(measure: string, clocks: readonly IndexDefinition[] = indexDefinitions): boolean {
  const clock = clocks.find(({ id }) => id === measure);
  if (clock) return clock.per !== null && endsAtConsolidation(clock);
  const complication = complicationMeasures.find(({ id }) => id === measure);
  return complication ? complication.kind === "share" || complication.kind === "rate" : readMeasure(measure)?.kind === "share";
}
