import { tableNames } from "@/lib/codebook";
import type { Change, Dropped, Finding, News, Stripped, TableCounts } from "@/lib/intake";
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
  /** Rows that are new to the registry, whether or not they were committed. */
  readonly fresh: Counts;
  /** The segments among those absent, by what the registry can name. */
  readonly absentSegments: readonly Pick<Stripped<"segment">, (typeof naming)[number]>[];
  readonly contentHash: string | null;
  /** Columns that aren't kept, why, and the kinds of identifier that their cells hold for certain. */
  readonly columns: readonly Dropped[];
  /** Comments by row that no event was coded of: their segments stand as events not collected. */
  readonly comments: readonly { readonly file: string; readonly row: number; readonly column: string }[];
  /** Rows held after this, of whichever file, that wait for the row of their segment or person; `null` when nothing was committed. */
  readonly waiting: Counts | null;
};

const naming = ["bone", "side", "surgeryYear", "surgeryQuarter", "ageAtSurgeryYears", "device"] as const;
const counted: readonly CountName[] = Object.values(countNames);
const nothing = Object.fromEntries(counted.map((name) => [name, 0])) as Counts;

export function answerOf(prepared: PreparedFiles, committed: CommitResult | null, waiting: Counts | null): IntakeAnswer {
  const { news, counts, comments } = prepared;
  return {
    batch: committed?.batch ?? null,
    committed: committed?.committed ?? nothing,
    changed: committed?.changed ?? nothing,
    unchanged: committed?.unchanged ?? nothing,
    refused: prepared.rowsRefused,
    dropped: [...new Set(prepared.dropped.map(({ header }) => header))],
    findings: prepared.findings,
    asks: prepared.questions.map(({ code, column, settledBy, choices, rows }) => ({ code, column, settledBy, choices, rows: rows.length })),
    changes: (news?.changes ?? []).map(({ corrected: _, ...change }) => change),
    absent: absentOf(news),
    fresh: counts.fresh ? byName(counts.fresh) : nothing,
    absentSegments: (news?.absent.segment ?? []).map(named),
    contentHash: committed?.contentHash ?? null,
    columns: prepared.dropped,
    comments: comments.map(({ file, row, header }) => ({ file, row, column: header })),
    waiting,
  };
}

function absentOf(news: News | null): Counts {
  if (!news) return nothing;
  return Object.fromEntries(tableNames.map((table) => [countNames[table], news.absent[table].length])) as Counts;
}

function byName(counts: TableCounts): Counts {
  return Object.fromEntries(tableNames.map((table) => [countNames[table], counts[table]])) as Counts;
}

function named(row: Stripped<"segment">): IntakeAnswer["absentSegments"][number] {
  return Object.fromEntries(naming.map((field) => [field, row[field]])) as IntakeAnswer["absentSegments"][number];
}
