import { complicationMatrix, type MatrixAnswer, type MatrixRow } from "@/lib/answers";
import { counted } from "@/lib/charts";
import { oneOf, parseWords, textOf, UsageError, wholeNumber } from "../arguments";
import { cohortNamed, fieldsOfSplit } from "../cohort-words";
import { type Command, done } from "../command";
import { withRegistry } from "../registry-folder";
import { endRuleWords, schemeWords } from "../scheme-words";
import { tableText } from "../table-text";

const options = {
  by: { type: "string" },
  cohort: { type: "string" },
  scheme: { type: "string" },
  end: { type: "string" },
  "without-pin-sites": { type: "boolean" },
  "as-of": { type: "string" },
} as const;

export const complications: Command = {
  words:
    "complications [--by FIELD,…] [--cohort NAME|JSON] [--scheme S] [--end healed-and-bearing|implant-removal|twelve-months] [--without-pin-sites] [--as-of BATCH]",
  about: "events by type, class and phase, each with the share of segments that had one",
  run: (args) =>
    withRegistry(async (registry) => {
      const { values, words } = parseWords(args, options);
      if (words.length > 0) throw new UsageError("complications takes no words");
      const scheme = oneOf(values, "scheme", schemeWords);
      const endRule = oneOf(values, "end", endRuleWords);
      const asOf = wholeNumber(values, "as-of");
      const answer = await complicationMatrix(registry, {
        by: fieldsOfSplit(textOf(values, "by")),
        where: await cohortNamed(registry, textOf(values, "cohort")),
        withoutPinSites: values["without-pin-sites"] === true,
        ...(scheme ? { scheme } : {}),
        ...(endRule ? { endRule } : {}),
        ...(asOf === undefined ? {} : { asOf }),
      });
      return done(answer, textOfMatrix(answer));
    }),
};

function textOfMatrix(answer: MatrixAnswer): string {
  const groups = answer.groups.map(
    (group) =>
      `${group.label}: ${group.lookedFor} of ${counted(group.segments, "segment")} had events looked for\n\n${tableText(
        headers(answer),
        group.rows.map((row) => cells(row, answer)),
      )}${agreementText(group.agreement, answer)}`,
  );
  const { title, source, endRule } = answer.scheme;
  return [
    ...groups,
    "",
    `Classes: ${title} (${source}); end of treatment: ${endRule}.`,
    ...answer.notes.map(({ text }) => text),
    `Result reference ${answer.stamp}, batch ${answer.batch}.`,
  ].join("\n");
}

/** The surgeon's class beside the derived one; nothing where none was recorded. */
function agreementText(agreement: MatrixAnswer["groups"][number]["agreement"], { scheme }: MatrixAnswer): string {
  if (agreement === null) return "";
  const { estimate, lower, upper } = agreement.kappa;
  const rounded = (value: number | null) => (value === null ? "–" : value.toFixed(2));
  const table = tableText(
    ["recorded \\ derived", ...scheme.classes],
    agreement.table.map((counts, i) => [scheme.classes[i] ?? "", ...counts]),
  );
  return `\n\nThe surgeon’s class beside the derived one: ${agreement.alike} of ${agreement.n} alike, weighted kappa ${rounded(estimate)} (95 % CI ${rounded(lower)} to ${rounded(upper)})\n\n${table}`;
}

function headers({ scheme }: MatrixAnswer): string[] {
  return ["event", "origin", "events", ...scheme.classes, "operations", "resolved in 12 months", "segments", "95 % CI"];
}

function cells(row: MatrixRow, { scheme }: MatrixAnswer): (string | number | null)[] {
  const { x, n, lower, upper } = row.segments;
  const percent = (share: number | null) => (share === null ? "–" : (share * 100).toFixed(1));
  const classes = scheme.classes.map((name) => row.byClass[name] ?? 0);
  return [
    row.type,
    row.origin,
    row.events,
    ...classes,
    row.operations,
    row.resolvedWithin12Months,
    `${x}/${n}`,
    `${percent(lower)} to ${percent(upper)} %`,
  ];
}
