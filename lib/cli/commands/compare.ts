import { compare as ask, type CompareAnswer, measureList } from "@/lib/answers";
import { conditionField } from "@/lib/cohorts";
import type { Registry } from "@/lib/registry";
import { parseWords, Refusal, textOf, UsageError, wholeNumber } from "../arguments";
import { cohortNamed, fieldsOfSplit } from "../cohort-words";
import { type Command, done } from "../command";
import { withRegistry } from "../registry-folder";
import { tableText } from "../table-text";

const options = {
  between: { type: "string" },
  cohorts: { type: "string" },
  cohort: { type: "string" },
  adjust: { type: "string" },
  test: { type: "boolean" },
  scheme: { type: "string" },
  "as-of": { type: "string" },
} as const;

export const compare: Command = {
  words: "compare ID --between FIELD=CODE,CODE | --cohorts NAME|JSON,NAME|JSON [--adjust FIELD,…] [--test]",
  about: "two groups side by side: case mix first, then the difference with its interval",
  async run(args) {
    const { values, words } = parseWords(args, options);
    const id = words[0];
    if (words.length !== 1 || id === undefined) throw new UsageError("compare requires one id of measure --list");
    if (!measureList().some((entry) => entry.id === id || id.startsWith(`${entry.id}.`)))
      throw new UsageError("compare requires an id of measure --list");
    const asOf = wholeNumber(values, "as-of");
    const scheme = textOf(values, "scheme");
    const adjust = fieldsOfSplit(textOf(values, "adjust"), "adjust");
    return withRegistry(async (registry) => {
      const between = await betweenOf(registry, textOf(values, "between"), textOf(values, "cohorts"), textOf(values, "cohort"));
      const answer = await refusing(() =>
        ask(registry, {
          measure: id,
          between,
          adjust,
          test: values.test === true,
          ...(scheme ? { scheme } : {}),
          ...(asOf === undefined ? {} : { asOf }),
        }),
      );
      return done(withoutRows(answer), textOfComparison(answer));
    });
  },
};

/** A question that can't be answered is refused with its reason; anything else is a fault. */
async function refusing<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof RangeError) throw new Refusal(error.message);
    throw error;
  }
}

async function betweenOf(registry: Registry, between: string | undefined, cohorts: string | undefined, cohort: string | undefined) {
  if ((between === undefined) === (cohorts === undefined))
    throw new UsageError("compare requires either --between FIELD=CODE,CODE or --cohorts");
  if (cohorts !== undefined) {
    const parts = splitCohorts(cohorts);
    if (parts.length !== 2) throw new UsageError("--cohorts requires two cohorts, each a saved name or JSON, with a comma between them");
    const [a, b] = await Promise.all(
      parts.map(async (part) => ({ name: part.startsWith("{") ? "a cohort" : part, where: await cohortNamed(registry, part) })),
    );
    return { cohorts: [a, b] as [NonNullable<typeof a>, NonNullable<typeof b>] };
  }
  const [field = "", codes = ""] = (between ?? "").split("=");
  const definition = conditionField(field);
  const values = codes.split(",").map((code) => typedValue(definition?.kind, code.trim()));
  if (!definition || values.length !== 2) throw new UsageError("--between requires FIELD=CODE,CODE");
  return { field, values: [values[0] ?? null, values[1] ?? null] as const, where: await cohortNamed(registry, cohort) };
}

function typedValue(kind: string | undefined, text: string): string | number | boolean | null {
  if (text === "null") return null;
  if (kind === "flag") return text === "true";
  return kind === "count" || kind === "number" ? Number(text) : text;
}

/** Commas inside JSON are not those between the two cohorts. */
function splitCohorts(text: string): string[] {
  let depth = 0;
  const parts = [""];
  for (const letter of text) {
    if (letter === "{" || letter === "[") depth++;
    if (letter === "}" || letter === "]") depth--;
    if (letter === "," && depth === 0) parts.push("");
    else parts[parts.length - 1] += letter;
  }
  return parts.map((part) => part.trim());
}

function withoutRows(answer: CompareAnswer) {
  return {
    ...answer,
    groups: answer.groups.map((group) => Object.fromEntries(Object.entries(group).filter(([key]) => key !== "marks" && key !== "rows"))),
  };
}

const rounded = (value: number | null) => (value === null ? null : Number(value.toPrecision(4)));

function textOfComparison(answer: CompareAnswer): string {
  const balance = tableText(
    ["case mix", "standardised difference"],
    answer.balance.filter(({ smd }) => smd !== null).map(({ field, smd }) => [field, rounded(smd)]),
  );
  const differences = tableText(
    ["what", "first", "second", "estimate", "95 % CI", "p"],
    answer.differences.map((one) => [
      one.what,
      one.a,
      one.b,
      rounded(one.estimate),
      one.lower === null ? null : `${rounded(one.lower)} to ${rounded(one.upper)}`,
      rounded(one.p),
    ]),
  );
  return [
    balance,
    "",
    differences,
    "",
    ...answer.notes.map(({ text }) => text),
    `Splits of this cohort looked at: ${answer.splitsLookedAt}. Result reference ${answer.stamp}.`,
  ].join("\n");
}
