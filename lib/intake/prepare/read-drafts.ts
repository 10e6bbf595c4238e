import { dayNumberOf } from "../strip";
import type { Mapping } from "../types";
import { addCodedEvents, type CodedRow } from "./coded-events";
import type { Draft } from "./draft";
import { compileRows } from "./draft-rows";
import type { PrepareOptions } from "./options";
import { eachRow } from "./pace";
import type { PreparedColumns } from "./prepare-columns";

export type DraftedSheet = PreparedColumns & { readonly drafts: readonly Draft[] };

/** Reads every row of the sheets into drafts. */
export async function readDrafts(
  columns: readonly PreparedColumns[],
  mappingOf: (file: string) => Mapping,
  options: PrepareOptions,
): Promise<DraftedSheet[]> {
  const of = columns.reduce((sum, { sheet }) => sum + sheet.rows.length, 0);
  const coded = new Map((options.eventsCoded ?? []).map((row) => [rowId(row), row]));
  const drafted: DraftedSheet[] = [];
  let before = 0;
  for (const prepared of columns) {
    const { sheet, match, plan, known } = prepared;
    const rules = {
      dates: plan.dates,
      thisYear: options.today.year,
      todayNumber: dayNumberOf(options.today),
      values: mappingOf(sheet.file).values,
      listed: {
        unit: options.units ?? [options.unit ?? "unit-1"],
        scoreCode: options.scores ?? [],
        proportionReference: options.proportionReferences ?? [],
      },
    };
    const readRow = compileRows(sheet, match.kind, plan.columns, rules, known);
    const drafts: Draft[] = [];
    const onChunk = (done: number) => options.onProgress?.({ step: "read", done: before + done, of });
    await eachRow(sheet.rows, (_, index) => drafts.push(withCoded(readRow(index), coded)), { signal: options.signal, onChunk });
    before += sheet.rows.length;
    drafted.push({ ...prepared, drafts });
  }
  return drafted;
}

function withCoded(draft: Draft, coded: ReadonlyMap<string, CodedRow>): Draft {
  const row = coded.size > 0 ? coded.get(rowId(draft)) : undefined;
  if (row) addCodedEvents(draft, row);
  return draft;
}

function rowId({ file, row }: { file: string; row: number }): string {
  return `${row}\u001f${file}`;
}
