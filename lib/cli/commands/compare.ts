import { compare as ask, compareFamily, compareSeveral, compareSeveralFamily } from "@/lib/answers";
import type { Registry } from "@/lib/registry";
import { parseWords, Refusal, textOf, UsageError, wholeNumber } from "../arguments";
import { fieldsOfSplit } from "../cohort-words";
import { type Answer, type Command, done } from "../command";
import { type Sides, sidesAsked } from "../compare/between-words";
import { textOfComparison, textOfFamily, textOfSeveral, textOfSeveralFamily, withoutRows } from "../compare/compare-text";
import { requireMeasure } from "../measure-words";
import { withRegistry } from "../registry-folder";

const options = {
  between: { type: "string" },
  cohorts: { type: "string" },
  cohort: { type: "string" },
  adjust: { type: "string" },
  test: { type: "boolean" },
  scheme: { type: "string" },
  "without-pin-sites": { type: "boolean" },
  landmark: { type: "string" },
  "as-of": { type: "string" },
} as const;

export const compare: Command = {
  words:
    "compare ID[,ID…] --between FIELD=CODE,CODE[,CODE…] | --cohorts NAME|JSON,NAME|JSON [--cohort NAME|JSON] [--adjust FIELD,…] [--test] [--scheme S] [--without-pin-sites] [--landmark DAYS] [--as-of BATCH]",
  about: "groups side by side: case mix first, then the difference with its interval; several outcomes are a family, with p values by Holm",
  async run(args) {
    const { values, words } = parseWords(args, options);
    const ids = words[0]?.split(",") ?? [];
    if (words.length !== 1) throw new UsageError("compare requires one id of measure --list, or several with commas between them");
    const asOf = wholeNumber(values, "as-of");
    const scheme = textOf(values, "scheme");
    const landmark = wholeNumber(values, "landmark");
    const how: How = {
      adjust: fieldsOfSplit(textOf(values, "adjust"), "adjust"),
      test: values.test === true,
      withoutPinSites: values["without-pin-sites"] === true,
      ...(scheme ? { scheme } : {}),
      ...(landmark === undefined ? {} : { landmark }),
      ...(asOf === undefined ? {} : { asOf }),
    };
    return withRegistry(async (registry) => {
      for (const id of ids) await requireMeasure(registry, id, "compare");
      const [between, cohorts, cohort] = [textOf(values, "between"), textOf(values, "cohorts"), textOf(values, "cohort")];
      const sides = await sidesAsked(registry, { between, cohorts, cohort });
      return refusing(() => answered(registry, ids, sides, how));
    });
  },
};

type How = Omit<Parameters<typeof ask>[1], "measure" | "between">;

async function answered(registry: Registry, ids: readonly string[], sides: Sides, how: How): Promise<Answer> {
  const [measure = "", ...more] = ids;
  if ("several" in sides) {
    if ((how.adjust ?? []).length > 0 || how.landmark !== undefined)
      throw new UsageError("compare requires two groups for covariates and for a landmark");
    if (more.length > 0) {
      const family = await compareSeveralFamily(registry, { ...how, measures: ids, ...sides.several });
      const members = family.members.map((member) => ({ ...member, answer: withoutRows(member.answer) }));
      return done({ ...family, members }, textOfSeveralFamily(family));
    }
    const answer = await compareSeveral(registry, { ...how, measure, ...sides.several });
    return done(withoutRows(answer), textOfSeveral(answer));
  }
  if (more.length === 0) {
    const answer = await ask(registry, { ...how, measure, between: sides.two });
    return done(withoutRows(answer), textOfComparison(answer));
  }
  const family = await compareFamily(registry, { ...how, measures: ids, between: sides.two });
  const members = family.members.map(({ crude, adjusted, ...member }) => ({
    ...member,
    crude: withoutRows(crude),
    adjusted: adjusted && withoutRows(adjusted),
  }));
  return done({ ...family, members }, textOfFamily(family));
}

/** A question that can't be answered is refused with its reason; anything else is a fault. */
async function refusing<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof RangeError) throw new Refusal(error.message);
    throw error;
  }
}
