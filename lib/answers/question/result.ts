import { checkWhere } from "@/lib/cohorts";
import type { Denominator, EndRule, Rescue } from "@/lib/outcomes";
import type { Registry } from "@/lib/registry";
import { ask } from "../ask";
import type { HealingAnswer, MeasureAnswer } from "../types";
import type { Question } from "./stamp";
import { version } from "./version";

/**
 * The answer again that a result reference names, from the question kept under it; `null` when none is.
 * `sameVersion` is false when the numbers come from a later version of the methods than the reference.
 * @throws RangeError for the reference of a comparison (`comparedAgain`) or of a place
 */
export async function result(
  registry: Registry,
  stamp: string,
): Promise<((HealingAnswer | MeasureAnswer) & { readonly sameVersion: boolean }) | null> {
  const kept = await registry.findQuestion(stamp);
  if (kept === null) return null;
  const { measure, by, cohort, state, options, method, version: asked } = JSON.parse(kept) as Question;
  if (method === "compare" || measure === "case-mix")
    throw new RangeError("result requires the reference of a measure, received that of a comparison");
  const answer = await ask(registry, {
    measure,
    by,
    where: checkWhere(cohort),
    asOf: state.batch,
    rescue: word(options.rescue) as Rescue | undefined,
    per: word(options.per ?? options.plan) as Denominator | undefined,
    landmark: typeof options.landmark === "number" ? options.landmark : undefined,
    scheme: word(options.scheme),
    score: word(options.scoreCode),
    endRule: word(options.endRule) as EndRule | undefined,
    withoutPinSites: options.withoutPinSites === true ? true : undefined,
  });
  return { ...answer, sameVersion: asked === version };
}

function word(option: string | number | boolean | null | undefined): string | undefined {
  return typeof option === "string" ? option : undefined;
}
