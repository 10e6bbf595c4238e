import { type AnyQuestion, ask, clocksAsOf, type HealingAnswer, isHealing, type MeasureAnswer, measureList } from "@/lib/answers";
import type { Registry } from "@/lib/registry";
import { textOfAnswer } from "../answer-text";
import { asked, oneOf, parseWords, textOf, UsageError, wholeNumber } from "../arguments";
import { cohortNamed, fieldsOfSplit } from "../cohort-words";
import { type Answer, type Command, done } from "../command";
import { requireMeasure } from "../measure-words";
import { withRegistry } from "../registry-folder";
import { endRuleWords, schemeWords } from "../scheme-words";
import { tableText } from "../table-text";

const options = {
  list: { type: "boolean" },
  by: { type: "string" },
  rescue: { type: "string" },
  per: { type: "string" },
  landmark: { type: "string" },
  cohort: { type: "string" },
  "as-of": { type: "string" },
  scheme: { type: "string" },
  score: { type: "string" },
  end: { type: "string" },
  "without-pin-sites": { type: "boolean" },
  marks: { type: "boolean" },
} as const;

export const measure: Command = {
  words:
    "measure ID [--by FIELD,…] [--rescue counted|competing] [--per FIELD] [--landmark DAYS] [--cohort NAME|JSON] [--as-of BATCH] [--scheme S] [--end RULE] [--without-pin-sites] [--score CODE] [--marks] | measure --list",
  about: "a measure by groups, with its intervals, exclusions and result reference",
  async run(args) {
    const { values, words } = parseWords(args, options);
    if (values.list) return withRegistry(listed);
    const id = words[0];
    if (words.length !== 1 || id === undefined) throw new UsageError("measure requires one id, or --list");
    return withRegistry(async (registry) => {
      await requireMeasure(registry, id, "measure");
      const question: AnyQuestion = {
        measure: id,
        by: fieldsOfSplit(textOf(values, "by")),
        where: await cohortNamed(registry, textOf(values, "cohort")),
        asOf: wholeNumber(values, "as-of"),
        rescue: oneOf(values, "rescue", ["counted", "competing"]),
        per: oneOf(values, "per", ["gainMm", "gainFinalMm", "plannedGainMm", "plannedGainFinalMm"]),
        landmark: wholeNumber(values, "landmark"),
        scheme: oneOf(values, "scheme", schemeWords),
        score: textOf(values, "score"),
        endRule: oneOf(values, "end", endRuleWords),
        withoutPinSites: values["without-pin-sites"] === true,
      };
      const answer = await asked(() => ask(registry, question));
      return done(values.marks ? answer : withoutMarks(answer), textOfAnswer(answer));
    });
  },
};

async function listed(registry: Registry): Promise<Answer> {
  const list = measureList(await clocksAsOf(registry));
  const rows = list.map(({ id, unit, definition }) => [id, unit, definition]);
  return done(list, tableText(["id", "unit", "what it is"], rows));
}

/** The answer without its single segments, which are printed only when asked for. */
export function withoutMarks(answer: HealingAnswer | MeasureAnswer) {
  if (isHealing(answer)) return { ...answer, groups: answer.groups.map(({ marks: _, ...group }) => group) };
  return { ...answer, groups: answer.groups.map(({ rows: _, ...group }) => group) };
}
