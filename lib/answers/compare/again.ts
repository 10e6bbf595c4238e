import { checkWhere, describeWhere, valueOfText } from "@/lib/cohorts";
import type { Registry } from "@/lib/registry";
import type { Question } from "../question/stamp";
import { version } from "../question/version";
import { type CaseMixAnswer, caseMix } from "./case-mix";
import { type CompareAnswer, compare } from "./compare";
import { compareSeveral, type SeveralAnswer } from "./several";
import type { Between } from "./sides";

export type ComparedAgain =
  | ({ readonly of: "two" } & CompareAnswer)
  | ({ readonly of: "several" } & SeveralAnswer)
  | ({ readonly of: "case-mix" } & CaseMixAnswer);

/**
 * A comparison, or its case mix, again from its result reference; `null` when the reference is of something else, or of nothing kept here.
 * Two cohorts bear the words of what they are: names under which they were saved may have gone to others.
 */
export async function comparedAgain(
  registry: Registry,
  stamp: string,
): Promise<{ readonly answer: ComparedAgain; readonly sameVersion: boolean } | null> {
  const kept = await registry.findQuestion(stamp);
  if (kept === null) return null;
  const question = JSON.parse(kept) as Question;
  if (question.method !== "compare" && question.measure !== "case-mix") return null;
  return { answer: await answerTo(registry, question), sameVersion: question.version === version };
}

async function answerTo(registry: Registry, { measure, cohort, by: [field = ""], options, state }: Question): Promise<ComparedAgain> {
  const values = String(options.values ?? "")
    .split(",")
    .map((text) => valueOfText(field, text));
  const asOf = state.batch;
  if (values.length > 2) {
    const several = { measure, field, values, where: checkWhere(cohort), test: options.test === true };
    return { of: "several", ...(await compareSeveral(registry, { ...several, asOf })) };
  }
  const between = betweenOf(cohort, field, values);
  if (measure === "case-mix") return { of: "case-mix", ...(await caseMix(registry, { between, asOf })) };
  const { adjust, scheme, landmark } = options;
  const answer = await compare(registry, {
    measure,
    between,
    adjust: typeof adjust === "string" && adjust !== "" ? adjust.split(",") : [],
    test: options.test === true,
    withoutPinSites: options.withoutPinSites === true,
    ...(typeof scheme === "string" ? { scheme } : {}),
    ...(typeof landmark === "number" ? { landmark } : {}),
    asOf,
  });
  return { of: "two", ...answer };
}

function betweenOf(cohort: unknown, field: string, [a = null, b = null]: readonly ReturnType<typeof valueOfText>[]): Between {
  const { cohorts } = cohort as { readonly cohorts?: readonly unknown[] };
  if (cohorts === undefined) return { field, values: [a, b], where: checkWhere(cohort) };
  const named = (one: unknown) => ({ name: describeWhere(checkWhere(one)), where: checkWhere(one) });
  return { cohorts: [named(cohorts[0]), named(cohorts[1])] };
}
