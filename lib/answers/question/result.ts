import { checkWhere } from "@/lib/cohorts";
import type { Denominator, Rescue } from "@/lib/outcomes";
import type { Registry } from "@/lib/registry";
import { healing } from "../healing/healing";
import type { HealingAnswer } from "../types";
import type { Question } from "./stamp";
import { version } from "./version";

/**
 * The answer again that a result reference names, from the question kept under it; `null` when none is.
 * `sameVersion` is false when the numbers come from a later version of the methods than the reference.
 */
export async function result(registry: Registry, stamp: string): Promise<(HealingAnswer & { readonly sameVersion: boolean }) | null> {
  const kept = await registry.findQuestion(stamp);
  if (kept === null) return null;
  const question = JSON.parse(kept) as Question;
  const answer = await healing(registry, {
    measure: question.measure,
    by: question.by,
    rescue: question.options.rescue as Rescue,
    ...(question.options.per === null ? {} : { per: question.options.per as Denominator }),
    where: checkWhere(question.cohort),
    asOf: question.state.batch,
  });
  return { ...answer, sameVersion: question.version === version };
}
