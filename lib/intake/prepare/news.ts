import { fieldOf, type TableName, tableNames } from "@/lib/codebook";
import type { Origin, StrippedRows } from "../types";
import type { AnyRow } from "./blank-row";
import { changedFields } from "./changed-fields";
import type { Gathered } from "./gather-rows";
import type { HeldIndex } from "./held-index";
import { eachRow } from "./pace";
import type { Change, News, Prepared, TableCounts } from "./prepared";
import { rowKey } from "./row-key";

type Counts = Pick<Prepared["counts"], "fresh" | "changed" | "unchanged" | "absent">;
export type Compared = { readonly counts: Counts; readonly news: News | null };
export const notCompared: Compared = { counts: { fresh: null, changed: null, unchanged: null, absent: null }, news: null };

/** What these files bring against what is held: rows that are new, fields that change, rows held that the files don't name and that stay. */
export async function compareWithHeld(
  gathered: Gathered,
  rows: StrippedRows,
  { held, signal }: { readonly held: HeldIndex | null; readonly signal: AbortSignal | null },
): Promise<Compared> {
  if (!held) return notCompared;
  const tables: (readonly [TableName, TableNews])[] = [];
  for (const table of tableNames) tables.push([table, await newsOfTable(table, { gathered, rows, held, signal })]);
  const each = <T>(take: (news: TableNews) => T) => Object.fromEntries(tables.map(([table, news]) => [table, take(news)]));
  const count = (take: (news: TableNews) => number) => each(take) as TableCounts;
  return {
    counts: {
      fresh: count(({ fresh }) => fresh.length),
      changed: count(({ changed }) => changed),
      unchanged: count(({ unchanged }) => unchanged),
      absent: count(({ absent }) => absent.length),
    },
    news: {
      fresh: each(({ fresh }) => fresh) as News["fresh"],
      changes: tables.flatMap(([, { changes }]) => changes),
      // a sheet of one table says nothing of the others
      absent: Object.fromEntries(tables.map(([table, { absent }]) => [table, rows[table].length === 0 ? [] : absent])) as News["absent"],
    },
  };
}

type TableNews = {
  readonly fresh: readonly Origin[];
  readonly changes: readonly Change[];
  readonly changed: number;
  readonly unchanged: number;
  readonly absent: readonly AnyRow[];
};
type Comparing = {
  readonly gathered: Gathered;
  readonly rows: StrippedRows;
  readonly held: HeldIndex;
  readonly signal: AbortSignal | null;
};

async function newsOfTable(table: TableName, { gathered, rows, held, signal }: Comparing): Promise<TableNews> {
  const named = new Set<AnyRow>();
  const fresh: Origin[] = [];
  const changes: Change[] = [];
  let changed = 0;
  const compare = (row: AnyRow) => {
    const known = held.find(table, row);
    const from = gathered[table].get(rowKey(table, row))?.from.draft;
    const origin = { file: from?.file ?? "", row: from?.row ?? 0 };
    if (!known) {
      fresh.push(origin);
      return;
    }
    named.add(known);
    const made = changesOf(table, row, known, held);
    for (const change of made) changes.push({ ...origin, ...change });
    if (made.length > 0) changed++;
  };
  await eachRow(rows[table] as readonly AnyRow[], compare, { signal });
  const absent = (held.rows[table] as readonly AnyRow[]).filter((row) => !named.has(row));
  return { fresh, changes, changed, unchanged: rows[table].length - fresh.length - changed, absent };
}

/** Changed fields with both values. A day says nothing by itself: it is told from the segment's surgery, or from the day held. */
function changesOf(table: TableName, row: AnyRow, known: AnyRow, held: HeldIndex): readonly Omit<Change, "file" | "row">[] {
  const here = held.asHeld(table, row);
  return changedFields(table, row, held).map(({ field, corrected }) => {
    const isDay = fieldOf(table, field).kind === "day";
    const [before = null, after = null] = [known[field], here[field]];
    if (!isDay || typeof after !== "number") return { table, field, from: before, to: after, days: null, corrected };
    const surgery = typeof known.surgeryDay === "number" ? known.surgeryDay : null;
    const zero = surgery ?? (typeof before === "number" ? before : after);
    const from = typeof before === "number" ? before - zero : null;
    return { table, field, from, to: after - zero, days: surgery === null ? "from-held" : "from-surgery", corrected };
  });
}
