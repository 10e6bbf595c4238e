import type { Registry } from "@/lib/registry";
import { holm } from "@/lib/stats";
import { readMeasure } from "../measures/catalogue";
import { isClock } from "../measures/clocks";
import { compareSeveral, type SeveralAnswer, type SeveralQuestion } from "./several";

export type SeveralFamilyQuestion = Omit<SeveralQuestion, "measure"> & { readonly measures: readonly string[] };
export type SeveralFamilyAnswer = {
  readonly members: readonly {
    readonly measure: string;
    readonly answer: SeveralAnswer /** p over all groups, by Holm over the family. */;
    readonly holm: number | null;
  }[];
  /** How many p values Holm's rule was over. */
  readonly tested: number;
};

/** Whether a measure has a mean, and so can be compared between more than two groups at once. */
export function hasMean(measure: string): boolean {
  return isClock(measure) || readMeasure(measure)?.kind === "number";
}

/**
 * Several outcomes of the same three groups or more, p values (where asked for) by Holm over the family.
 * @throws RangeError when no outcome is named, one has no mean, or there are fewer than three groups
 */
export async function compareSeveralFamily(
  registry: Registry,
  { measures, ...asked }: SeveralFamilyQuestion,
): Promise<SeveralFamilyAnswer> {
  if (measures.length === 0) throw new RangeError("compareSeveralFamily requires an outcome, received none");
  const answers = await Promise.all(measures.map((measure) => compareSeveral(registry, { ...asked, measure })));
  const tested = answers.flatMap(({ p }, place) => (p === null ? [] : [{ place, p }]));
  const adjusted = tested.length === 0 ? [] : holm({ p: tested.map(({ p }) => p) }).adjusted;
  const holmAt = new Map(tested.map(({ place }, i) => [place, adjusted[i] ?? null]));
  return {
    members: answers.map((answer, place) => ({ measure: answer.measure, answer, holm: holmAt.get(place) ?? null })),
    tested: tested.length,
  };
}
