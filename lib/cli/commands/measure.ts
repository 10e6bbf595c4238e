import { type HealingAnswer, healing, measureList } from "@/lib/answers";
import { CohortError, conditionField, conditionFieldIds, parseWhere, type Where } from "@/lib/cohorts";
import { oneOf, parseWords, textOf, UsageError, wholeNumber } from "../arguments";
import { type Answer, type Command, done } from "../command";
import { withRegistry } from "../registry-folder";
import { tableText } from "../table-text";

const options = {
  list: { type: "boolean" },
  by: { type: "string" },
  rescue: { type: "string" },
  per: { type: "string" },
  cohort: { type: "string" },
  "as-of": { type: "string" },
  marks: { type: "boolean" },
} as const;

export const measure: Command = {
  words: "measure ID | measure --list",
  about: "a measure by groups, with its intervals, exclusions and result reference",
  async run(args) {
    const { values, words } = parseWords(args, options);
    if (values.list) return listed();
    const id = words[0];
    if (words.length !== 1 || id === undefined) throw new UsageError("measure requires one id, or --list");
    if (!measureList().some((entry) => entry.id === id)) throw new UsageError("measure requires an id of measure --list");
    const asOf = wholeNumber(values, "as-of");
    const rescue = oneOf(values, "rescue", ["counted", "competing"]);
    const per = oneOf(values, "per", ["gainMm", "gainFinalMm", "plannedGainMm", "plannedGainFinalMm"]);
    const question = {
      measure: id,
      by: fieldsOfSplit(textOf(values, "by")),
      where: cohortOf(textOf(values, "cohort")),
      ...(rescue ? { rescue } : {}),
      ...(per ? { per } : {}),
      ...(asOf === undefined ? {} : { asOf }),
    };
    const answer = await withRegistry((registry) => healing(registry, question));
    return done(values.marks ? answer : withoutMarks(answer), textOfAnswer(answer));
  },
};

function listed(): Answer {
  const list = measureList();
  return done(
    list,
    tableText(
      ["id", "unit", "what it is"],
      list.map(({ id, unit, definition }) => [id, unit, definition]),
    ),
  );
}

function fieldsOfSplit(text: string | undefined): string[] {
  const fields = text === undefined || text === "" ? [] : text.split(",").map((field) => field.trim());
  const wrong = fields.some((field) => !conditionField(field));
  if (wrong) throw new UsageError(`--by requires fields among ${conditionFieldIds().join(", ")}`);
  return fields;
}

/** @throws UsageError when the text is no cohort */
export function cohortOf(text: string | undefined): Where {
  if (text === undefined) return {};
  try {
    return parseWhere(text);
  } catch (error) {
    if (error instanceof CohortError) throw new UsageError(error.message);
    throw error;
  }
}

export function withoutMarks(answer: HealingAnswer) {
  return { ...answer, groups: answer.groups.map(({ marks: _, ...group }) => group) };
}

const rounded = (value: number | null) => (value === null ? null : Number(value.toFixed(1)));

export function textOfAnswer(answer: HealingAnswer): string {
  const rows = answer.groups.map((group) => [
    group.label,
    group.patients,
    group.segments,
    group.healed ?? group.n ?? null,
    group.censored ?? null,
    Object.values(group.excluded).reduce((sum, n) => sum + n, 0),
    rounded(group.mean.estimate),
    group.mean.lower === null ? null : `${rounded(group.mean.lower)} to ${rounded(group.mean.upper)}`,
    rounded(group.median.estimate),
  ]);
  const table = tableText(["group", "patients", "segments", "measured", "unhealed", "excluded", "mean", "95 % CI", "median"], rows);
  const notes = [...new Set([...answer.notes, ...answer.groups.flatMap((group) => group.notes)].map(({ text }) => text))];
  const head = `${answer.definition.title}: ${answer.definition.sentence} (${answer.unit})`;
  return [head, "", table, "", ...notes, `Result reference ${answer.stamp}, batch ${answer.batch}.`].join("\n");
}
