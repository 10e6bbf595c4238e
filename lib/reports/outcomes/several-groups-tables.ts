import type { Difference, SeveralAnswer, SeveralBalance, SeveralFamilyAnswer } from "@/lib/answers";
import { type Column, count, decimals, noValue, tableFrom, words } from "@/lib/charts";
import type { ToldTable } from "../told/told";
import { likeText } from "../words/case-mix-record";
import { wordsOf } from "./several-groups-words";
import { pCell } from "./side-by-side-tables";
import { detectableText, estimateText, intervalText } from "./side-by-side-words";

/** What each group was like to begin with, and how far the two that are least alike stand apart. */
export function severalBalanceTable({ sides, balance }: SeveralAnswer): ToldTable {
  const columns: Column<SeveralBalance>[] = [
    words("field", "Field", ({ label }) => label),
    ...sides.map((side, i) => words<SeveralBalance>(`group-${i + 1}`, side.words, ({ like }) => likeText(like[i] ?? null))),
    { id: "smd", head: "Largest SMD", align: "end", cell: ({ smd }) => (smd === null ? noValue : decimals(smd, 2)) },
  ];
  return { caption: "How alike the groups were to begin with", table: tableFrom(columns, balance) };
}

type Row = { readonly answer: SeveralAnswer; readonly difference: Difference };

/** Each group against all others. */
export function severalDifferencesTable(answers: readonly SeveralAnswer[]): ToldTable {
  const rows = answers.flatMap((answer) => answer.differences.map((difference): Row => ({ answer, difference })));
  const columns: Column<Row>[] = [
    words("outcome", "Outcome", ({ answer }) => answer.definition.title),
    words("group", "Group less all others", ({ answer, difference }) => wordsOf(difference, answer)),
    { id: "estimate", head: "Difference of means", align: "end", cell: ({ difference }) => estimateText(difference) },
    { id: "interval", head: "95 % CI", align: "end", cell: ({ difference }) => intervalText(difference) },
    { id: "df", head: "df", align: "end", cell: ({ difference: { df } }) => (df === null ? noValue : decimals(df, 1)) },
    { id: "detectable", head: "Could have shown", align: "end", cell: ({ difference }) => detectableText(difference) },
  ];
  return { caption: "How they differ", table: tableFrom(columns, rows) };
}

type Member = SeveralFamilyAnswer["members"][number];

/** One test over all groups for each outcome. */
export function severalTestsTable({ members }: SeveralFamilyAnswer): ToldTable {
  const columns: Column<Member>[] = [
    words("outcome", "Outcome", ({ answer }) => answer.definition.title),
    words("test", "Test over all groups", ({ answer }) => answer.testMethod ?? noValue),
    count("groups", "Groups", ({ answer }) => answer.differences.length),
    { id: "p", head: "p", align: "end", cell: ({ answer }) => pCell(answer.p) },
    { id: "holm", head: "p by Holm", align: "end", cell: ({ holm }) => pCell(holm) },
  ];
  return { caption: "Whether any group stands apart", table: tableFrom(columns, members) };
}
