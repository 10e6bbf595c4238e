import type { Registry } from "@/lib/registry";
import type { Question } from "./stamp";

/** How many different splits of a cohort were asked for in this registry, whatever the measure: printed beside every comparison. */
export async function splitsLookedAt(registry: Registry, { cohort, by }: Pick<Question, "cohort" | "by">): Promise<number> {
  const wanted = JSON.stringify(cohort);
  const splits = new Set<string>([JSON.stringify(by)]);
  for (const asked of await registry.questions()) {
    const question = JSON.parse(asked) as Question;
    if (question.by.length > 0 && JSON.stringify(question.cohort) === wanted) splits.add(JSON.stringify(question.by));
  }
  splits.delete("[]");
  return Math.max(1, splits.size);
}
