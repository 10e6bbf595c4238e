import {
  casebook as ask,
  type CasebookAnswer,
  type CasebookQuestion,
  casebookColumns,
  casebookList,
  casebookLists,
  caseOf,
  highestCase,
  usualColumns,
} from "@/lib/answers";
import { counted } from "@/lib/charts";
import { canBeFound } from "@/lib/codebook";
import { valueWords } from "@/lib/cohorts";
import { parseWords, Refusal, textOf, UsageError, wholeNumber } from "../arguments";
import { cohortNamed } from "../cohort-words";
import { type Answer, type Command, done } from "../command";
import { withRegistry } from "../registry-folder";
import { tableText } from "../table-text";

const options = {
  where: { type: "string" },
  search: { type: "string" },
  list: { type: "string" },
  columns: { type: "string" },
  sort: { type: "string" },
  descending: { type: "boolean" },
  from: { type: "string" },
  limit: { type: "string" },
  "as-of": { type: "string" },
} as const;
type Values = ReturnType<typeof parseWords<typeof options>>["values"];

export const casebook: Command = {
  words:
    "casebook [--where JSON] [--search WORDS] [--list LIST] [--columns ID,… | all] [--sort ID [--descending]] [--from N] [--limit N] [--as-of BATCH] | casebook CASE [--as-of BATCH]",
  about: "the segments held, by case number, days counted from each one’s surgery; or all that is held of one case",
  async run(args) {
    const { values, words } = parseWords(args, options);
    const asOf = wholeNumber(values, "as-of");
    if (words.length === 1 && /^\d{1,9}$/.test(words[0] ?? "")) return oneCase(Number(words[0]), asOf);
    if (words.length > 0) throw new UsageError("casebook requires the number of one case, or no word at all");
    const question = { ...questionOf(values, args.includes("--json")), ...(asOf === undefined ? {} : { asOf }) };
    const answer = await withRegistry(async (registry) => {
      if (!canBeFound(question.search ?? "", await highestCase(registry, asOf)))
        throw new UsageError("--search requires numbers of cases, years, surgeons' codes or words that are recorded");
      return ask(registry, { ...question, where: await cohortNamed(registry, textOf(values, "where")) });
    });
    return done(withFlatRows(answer), textOfAnswer(answer));
  },
};

async function oneCase(number: number, asOf: number | undefined): Promise<Answer> {
  const answer = await withRegistry((registry) => caseOf(registry, number, asOf === undefined ? {} : { asOf }));
  if (!answer) throw new Refusal(`The registry holds no case ${number}.`);
  return done(answer, JSON.stringify(answer, null, 2));
}

/** A script gets every column unless it names some; a person gets those that fit a line. @throws UsageError */
function questionOf(values: Values, forScript: boolean): CasebookQuestion {
  const list = textOf(values, "list");
  if (list !== undefined && !casebookList(list))
    throw new UsageError(`--list requires one of ${casebookLists.map(({ id }) => id).join(", ")}`);
  const [search, sort] = [textOf(values, "search"), textOf(values, "sort")];
  const [from, limit] = [wholeNumber(values, "from"), wholeNumber(values, "limit")];
  return {
    columns: columnsOf(textOf(values, "columns") ?? (forScript ? "all" : (list && casebookList(list)?.columns.join(",")) || undefined)),
    descending: values.descending === true,
    ...(search === undefined ? {} : { search }),
    ...(list === undefined ? {} : { list }),
    ...(sort === undefined ? {} : { sort: columnNamed(sort, "--sort") }),
    ...(from === undefined ? {} : { from }),
    ...(limit === undefined ? {} : { limit }),
  };
}

function columnsOf(text: string | undefined): readonly string[] {
  if (text === undefined) return usualColumns;
  if (text === "all") return casebookColumns.map(({ id }) => id);
  return text.split(",").map((id) => columnNamed(id.trim(), "--columns"));
}

function columnNamed(id: string, option: string): string {
  if (id !== "case" && !casebookColumns.some((column) => column.id === id))
    throw new UsageError(`${option} requires columns among ${casebookColumns.map((column) => column.id).join(", ")}`);
  return id;
}

function withFlatRows({ caseNumbers: _, closing: __, columns, rows, ...answer }: CasebookAnswer) {
  return {
    ...answer,
    columns: columns.map(({ id, label, unit }) => ({ id, label, unit })),
    rows: rows.map(({ case: number, segment, values }) => ({ case: number, segment, ...values })),
  };
}

function textOfAnswer({ columns, rows, segments, cases, held, batch }: CasebookAnswer): string {
  const heads = columns.map(({ id, unit }) => (unit === null || unit === "days" ? id : `${id} (${unit})`));
  const cell = (value: string | number | boolean | null) => {
    if (value === null) return null;
    return typeof value === "number" ? Math.round(value * 10) / 10 : valueWords(value);
  };
  const table = tableText(
    ["case", ...heads],
    rows.map(({ case: number, values }) => [number, ...columns.map(({ id }) => cell(values[id] ?? null))]),
  );
  return [table, "", `${segments} of ${counted(held, "segment")}, in ${counted(cases, "case")}; days from surgery; batch ${batch}.`].join(
    "\n",
  );
}
