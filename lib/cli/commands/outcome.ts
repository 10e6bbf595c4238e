import type { Registry } from "@/lib/registry";
import {
  type PlaceQuestion,
  type Told,
  tellDaysAtEqualGain,
  tellDistractionCourse,
  tellGainAgainstPlan,
  tellHealingCurve,
  tellProportion,
} from "@/lib/reports";
import { asked, oneOf, parseWords, textOf, UsageError, wholeNumber } from "../arguments";
import { cohortNamed, fieldsOfSplit } from "../cohort-words";
import { type Command, done } from "../command";
import { withRegistry } from "../registry-folder";
import { textOfTold, toldAsData } from "../told-text";

const options = {
  by: { type: "string" },
  cohort: { type: "string" },
  "as-of": { type: "string" },
  measure: { type: "string" },
  rescue: { type: "string" },
  landmark: { type: "string" },
  films: { type: "string" },
  test: { type: "boolean" },
  plan: { type: "string" },
  tolerance: { type: "string" },
  norm: { type: "string" },
} as const;
type Values = Readonly<Record<string, string | boolean | string[] | undefined>>;
type Tell = (registry: Registry, question: PlaceQuestion, values: Values) => Promise<Told>;

const clocks = ["surgery-to-consolidation", "distraction-to-consolidation", "maturation", "treatment"] as const;
const proportions = [
  "proportion-tibia-femur",
  "proportion-sitting-height",
  "proportion-leg",
  "proportion-span",
  "proportion-left-right",
] as const;

function landmarkOf(values: Values): { readonly landmark?: number } {
  const landmark = wholeNumber({ ...values }, "landmark");
  return landmark === undefined ? {} : { landmark };
}

/** Places of Outcomes whose record is more than one measure. */
const places: Readonly<Record<string, Tell>> = {
  "days-at-equal-gain": (registry, question, values) =>
    tellDaysAtEqualGain(registry, { ...question, measure: oneOf({ ...values }, "measure", clocks) ?? clocks[0], ...landmarkOf(values) }),
  "healing-curve": (registry, question, values) =>
    tellHealingCurve(registry, {
      ...question,
      rescue: oneOf({ ...values }, "rescue", ["counted", "competing"]) ?? "counted",
      films: oneOf({ ...values }, "films", ["showed", "between"]) ?? "showed",
      test: values.test === true,
      ...landmarkOf(values),
    }),
  "gain-against-plan": (registry, question, values) =>
    tellGainAgainstPlan(registry, {
      ...question,
      plan: oneOf({ ...values }, "plan", ["plannedGainMm", "plannedGainFinalMm"]) ?? "plannedGainMm",
      toleranceMm: wholeNumber({ ...values }, "tolerance") ?? null,
    }),
  distraction: (registry, question) => tellDistractionCourse(registry, question),
  proportion: (registry, question, values) =>
    tellProportion(registry, {
      ...question,
      measure: oneOf({ ...values }, "measure", proportions) ?? proportions[0],
      norm: textOf({ ...values }, "norm") ?? null,
    }),
};

export const outcome: Command = {
  words: `outcome ${Object.keys(places).join("|")} [--by FIELD,…] [--cohort NAME|JSON] [--as-of BATCH] [--measure ID] [--rescue counted|competing] [--landmark DAYS] [--films showed|between] [--test] [--plan FIELD] [--tolerance MM] [--norm SET]`,
  about: "a place of Outcomes as its page shows it: sentences, numbers of its figures and tables, result references",
  async run(args) {
    const { values, words } = parseWords(args, options);
    const tell = words.length === 1 ? places[words[0] ?? ""] : undefined;
    if (!tell) throw new UsageError(`outcome requires one of ${Object.keys(places).join(", ")}`);
    return withRegistry(async (registry) => {
      const question: PlaceQuestion = {
        by: fieldsOfSplit(textOf(values, "by")),
        where: await cohortNamed(registry, textOf(values, "cohort")),
        asOf: wholeNumber(values, "as-of") ?? null,
      };
      const told = await asked(() => tell(registry, question, values));
      return done(toldAsData(told), textOfTold(told));
    });
  },
};
