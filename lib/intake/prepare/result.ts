import { byTable, type TableName } from "@/lib/codebook";
import { emptyMapping } from "../mapping/empty-mapping";
import { mergeMappings } from "../mapping/merge-mappings";
import { raggedFindings } from "../read/sheet-of";
import type { Finding, Mapping, Sheet, StrippedRows } from "../types";
import { commentsOf } from "./comments";
import { type Compared, notCompared } from "./news";
import type { PrepareOptions } from "./options";
import { groupFindings, orderFindings } from "./order-findings";
import { eachRow } from "./pace";
import { findingsOf, headersByField } from "./place-facts";
import type { PreparedColumns } from "./prepare-columns";
import type { Prepared, Refused, TableCounts } from "./prepared";
import type { Question } from "./question";
import { samplesOfSheets } from "./samples";
import { settledMapping } from "./settled-mapping";
import type { StrippedSheet } from "./strip-drafts";
import type { StrippedDraft } from "./stripped-draft";

type MappingOf = (file: string) => Mapping;
type Columns = readonly PreparedColumns[];
export type Walked = {
  readonly columns: Columns;
  readonly sheets: readonly StrippedSheet[];
  readonly rows: StrippedRows;
  /** Questions of whole files, whose findings no row holds. */
  readonly asked: readonly Question[];
  readonly questions: readonly Question[];
  readonly compared: Compared;
  readonly mappingOf: MappingOf;
  readonly options: PrepareOptions;
  readonly stands: (draft: StrippedDraft) => boolean;
};

export const noRows: StrippedRows = byTable((): readonly never[] => []);

/** What is known before a row is read: columns matched, dropped and asked about. */
export function columnsOnly(columns: Columns, mappingOf: MappingOf, options: PrepareOptions): Prepared {
  const questions = columns.flatMap(({ plan }) => plan.questions);
  const findings = [...columns.flatMap((column) => column.findings), ...questions.map(({ finding }) => finding)];
  return {
    stage: "columns",
    rows: noRows,
    ...sorted(findings),
    questions,
    refused: [],
    samples: [],
    counts: { rowsRead: 0, rowsRefused: 0, made: countRows(noRows), ...notCompared.counts },
    news: null,
    ...ofColumns(columns, mappingOf, options),
  };
}

/** Everything about files whose rows were read. */
export async function withRows({
  columns,
  sheets,
  rows,
  asked,
  questions,
  compared,
  mappingOf,
  options,
  stands,
}: Walked): Promise<Prepared> {
  const placed: { draft: StrippedDraft; findings: readonly Finding[] }[] = [];
  for (const { plan, stripped } of sheets) {
    const headers = headersByField(plan.columns);
    const tell = (draft: StrippedDraft) => draft.facts.length > 0 && placed.push({ draft, findings: findingsOf(draft, headers) });
    await eachRow(stripped, tell, { signal: options.signal });
  }
  const refused = [
    ...placed.flatMap(({ draft, findings }) => refusedRow(draft, findings)),
    ...columns.flatMap(({ sheet }) => raggedRows(sheet)),
  ];
  const findings = [
    ...columns.flatMap((column) => column.findings),
    ...asked.map(({ finding }) => finding),
    ...placed.flatMap((row) => row.findings),
  ];
  return {
    stage: "rows",
    rows,
    ...sorted(findings),
    questions,
    refused,
    samples: samplesOfSheets(sheets, stands),
    counts: {
      rowsRead:
        sheets.reduce((sum, { stripped }) => sum + stripped.length, 0) + columns.reduce((sum, { sheet }) => sum + sheet.ragged.length, 0),
      rowsRefused: refused.length,
      made: countRows(rows),
      ...compared.counts,
    },
    news: compared.news,
    ...ofColumns(columns, mappingOf, options),
  };
}

function sorted(findings: readonly Finding[]) {
  const groups = groupFindings(findings);
  return { findings: orderFindings(findings, groups), groups };
}

function refusedRow({ draft: { file, row } }: StrippedDraft, findings: readonly Finding[]): Refused[] {
  const reasons = findings.filter(({ severity }) => severity === "error");
  return reasons.length === 0 ? [] : [{ file, row, reasons }];
}

function raggedRows(sheet: Sheet): Refused[] {
  return raggedFindings(sheet).map((finding) => ({ file: sheet.file, row: finding.row ?? 0, reasons: [finding] }));
}

function ofColumns(columns: Columns, mappingOf: MappingOf, options: PrepareOptions) {
  const settled = columns.map((column) => [column.sheet.file, settledMapping(column, mappingOf(column.sheet.file))] as const);
  return {
    dropped: columns.flatMap((column) => column.dropped),
    comments: commentsOf(columns, options.eventsCoded),
    matches: columns.map(({ sheet, match }) => ({ file: sheet.file, match })),
    mapping: settled.length > 0 ? mergeMappings(settled.map(([, mapping]) => mapping)) : (options.mapping ?? emptyMapping),
    mappings: Object.fromEntries(settled),
    sheets: columns.map(({ sheet }) => sheet),
  };
}

export function countRows(rows: Readonly<Record<TableName, readonly unknown[]>>): TableCounts {
  return byTable((table) => rows[table].length);
}
