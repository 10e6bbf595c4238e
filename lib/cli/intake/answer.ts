import { tableNames } from "@/lib/codebook";
import type { Change, Finding, News } from "@/lib/intake";
import { type CommitResult, type CountName, type Counts, countNames } from "@/lib/registry";
import type { PreparedFiles } from "./prepare-files";

/** What `intake --json` prints (ids.md §11). */
export type IntakeAnswer = {
  readonly batch: number | null;
  readonly committed: Counts;
  readonly changed: Counts;
  readonly unchanged: Counts;
  readonly refused: number;
  readonly dropped: readonly string[];
  readonly findings: readonly Finding[];
  readonly asks: readonly {
    readonly code: string;
    readonly column: string | null;
    readonly settledBy: string;
    readonly choices: readonly string[];
    readonly rows: number;
  }[];
  /** Fields in which rows differ from what is held, and rows held of the same tables that the files don't name. */
  readonly changes: readonly Omit<Change, "corrected">[];
  readonly absent: Counts;
  readonly contentHash: string | null;
};

const counted: readonly CountName[] = Object.values(countNames);
const nothing = Object.fromEntries(counted.map((name) => [name, 0])) as Counts;

export function answerOf(prepared: PreparedFiles, committed: CommitResult | null): IntakeAnswer {
  return {
    batch: committed?.batch ?? null,
    committed: committed?.committed ?? nothing,
    changed: committed?.changed ?? nothing,
    unchanged: committed?.unchanged ?? nothing,
    refused: prepared.rowsRefused,
    dropped: prepared.dropped,
    findings: prepared.findings,
    asks: prepared.questions.map(({ code, column, settledBy, choices, rows }) => ({ code, column, settledBy, choices, rows: rows.length })),
    changes: (prepared.news?.changes ?? []).map(({ corrected: _, ...change }) => change),
    absent: absentOf(prepared.news),
    contentHash: committed?.contentHash ?? null,
  };
}

function absentOf(news: News | null): Counts {
  if (!news) return nothing;
  return Object.fromEntries(tableNames.map((table) => [countNames[table], news.absent[table].length])) as Counts;
}

const wordsOfCount: Readonly<Record<keyof Counts, string>> = {
  persons: "persons",
  bodyMeasures: "body measures",
  segments: "segments",
  visits: "visits",
  events: "events",
  scores: "scores",
};

function countsText(counts: Counts): string {
  const parts = counted.flatMap((name) => (counts[name] > 0 ? [`${counts[name]} ${wordsOfCount[name]}`] : []));
  return parts.length === 0 ? "nothing" : parts.join(", ");
}

/** The same for a person: findings by kind first, what they cost before what they say. */
export function textOfIntake(answer: IntakeAnswer, { groups, findings }: PreparedFiles): string {
  const lines = [
    answer.batch === null
      ? "Nothing new."
      : `Batch ${answer.batch}: ${countsText(answer.committed)} new; ${countsText(answer.changed)} changed; ${countsText(answer.unchanged)} as held.`,
    ...(answer.changes.length > 0 ? answer.changes.slice(0, mostShown).map(changeText) : []),
    ...(counted.some((name) => answer.absent[name] > 0)
      ? [`${countsText(answer.absent)} held and not in these files; they stay held.`]
      : []),
    `${answer.refused} rows set aside. Columns not kept: ${answer.dropped.join(", ") || "none"}.`,
    ...groups
      .filter(({ severity }) => severity !== "note")
      .map(
        ({ code, severity, column, rows, bringsBack }) =>
          `${severity}  ${code}${column ? ` in ${column}` : ""}: ${rows} rows${bringsBack > 0 ? `, mending brings back ${bringsBack} segments` : ""}`,
      ),
    ...findings
      .filter(({ severity }) => severity === "error")
      .slice(0, mostShown)
      .map(findingText),
    ...answer.asks.map(
      ({ code, column, settledBy, choices }) =>
        `must be answered: ${code}${column ? ` in ${column}` : ""}; settled by ${settledBy} in the mapping${optionFor(settledBy)}, one of ${choices.join(", ")}`,
    ),
  ];
  return lines.join("\n");
}

const mostShown = 50;

function changeText({ file, row, field, from, to, days }: IntakeAnswer["changes"][number]): string {
  const unit = days === null ? "" : days === "from-surgery" ? " days from surgery" : " days from the day held";
  return `  ${file}, row ${row}: ${field} ${from ?? "not recorded"} → ${to}${unit}`;
}

function findingText({ row, column, found, expected, mend }: Finding): string {
  const place = [row === null ? null : `row ${row}`, column].filter(Boolean).join(", ");
  return `  ${place}: found ${found}, expected ${expected}; ${mend}`;
}

const options: Readonly<Record<string, string>> = { dates: " or --dates", decimal: " or --decimal", units: " or --lengths" };
function optionFor(settledBy: string): string {
  return options[settledBy] ?? "";
}
