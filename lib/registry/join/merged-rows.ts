import { versionTable } from "@/db/identities";
import type { Connection } from "@/db/open";
import { snake, type TableName } from "@/lib/codebook";
import { type Cell, type Layout, layoutOf } from "../commit/cells";
import { columnsOfRow, fromAsOf, segmentColumn } from "../read/row-sql";
import type { Group, Member } from "./groups";

/** A row as it stands under one of a patient's numbers, its days on the line of the first. */
type Source = { readonly entity: number; readonly segment: number | null; readonly cells: readonly Cell[] };
/** A row of a patient with several numbers: what all of them say of it, under the identity of the first that has it. */
export type MergedRow = Source & { readonly entities: readonly number[] };

type Raw = readonly Cell[];

/** A member's cells on the patient's own line and under the first number. */
function rebase({ fields }: Layout, cells: Raw, root: Member, { days }: Member): readonly Cell[] {
  return cells.map((cell, i) => {
    const [id, field] = fields[i] ?? [];
    if (id === "person") return root.person;
    return field?.kind === "day" && typeof cell === "number" ? cell + days : cell;
  });
}

function sourcesOf(db: Connection, layout: Layout, batch: number, { root, members }: Group): readonly Source[] {
  const { table } = layout;
  const person = table === "person" ? "i.entity" : "p.entity";
  const find = db
    .prepare(`SELECT i.entity, ${segmentColumn[table] ?? "NULL"}, ${columnsOfRow(table)} ${fromAsOf(table)} WHERE ${person} = @person`)
    .raw();
  return members.flatMap((member) =>
    (find.all({ batch, person: member.entity }) as Raw[]).map(([entity, segment = null, ...cells]) => ({
      entity: Number(entity),
      segment: segment === null ? null : Number(segment),
      cells: rebase(layout, cells, root, member),
    })),
  );
}

/** Since which batch a row has held the value that it holds of a field. */
function sinceWhen(db: Connection, { table, fields }: Layout, batch: number): (entity: number, place: number) => number {
  return (entity, place) => {
    const column = snake(fields[place]?.[0] ?? "");
    const versions = db
      .prepare(
        `SELECT since_batch AS since, until_batch AS until, ${column} AS value FROM ${versionTable(table)}
         WHERE entity = ? AND since_batch <= ? ORDER BY since_batch DESC`,
      )
      .all(entity, batch) as { since: number; until: number; value: Cell }[];
    let since = versions[0]?.since ?? 0;
    for (const version of versions.slice(1)) {
      if (version.until !== since || version.value !== versions[0]?.value) break;
      since = version.since;
    }
    return since;
  };
}

/**
 * One cell from several: the one that is recorded; of two that differ the one that was brought later, as if the patient had had one number
 * all along; of two brought at once, the first number's.
 */
function cellOf(sources: readonly Source[], place: number, since: (entity: number, place: number) => number): Cell {
  const told = sources.filter(({ cells }) => cells[place] !== null);
  const [first] = told;
  if (!first) return null;
  if (told.every(({ cells }) => cells[place] === first.cells[place])) return first.cells[place] ?? null;
  const latest = told.reduce((a, b) => (since(b.entity, place) > since(a.entity, place) ? b : a));
  return latest.cells[place] ?? null;
}

const keyOf = ({ key }: Layout, cells: readonly Cell[]) => key.map((place) => cells[place] ?? "").join("|");

/** Blanks first, numbers by size, texts by letter: the order of SQLite's indexes. */
function compare(a: Cell, b: Cell): number {
  if (a === b) return 0;
  if (a === null || b === null) return a === null ? -1 : 1;
  return a < b ? -1 : 1;
}

function inNaturalOrder({ key }: Layout): (a: Source, b: Source) => number {
  return (a, b) => key.reduce((sum, place) => sum || compare(a.cells[place] ?? null, b.cells[place] ?? null), 0);
}

/** The unit is that of the first number: the other's only says where its number came from. */
const ofTheFirst: ReadonlySet<string> = new Set(["unit", "line"]);

/** The rows of a table of a patient with several numbers as of a batch, in the order of their natural keys. */
export function mergedRows(db: Connection, table: TableName, batch: number, group: Group): readonly MergedRow[] {
  const layout = layoutOf(table);
  const since = sinceWhen(db, layout, batch);
  const byKey = new Map<string, Source[]>();
  for (const source of sourcesOf(db, layout, batch, group)) {
    const key = keyOf(layout, source.cells);
    byKey.set(key, [...(byKey.get(key) ?? []), source]);
  }
  const rows = [...byKey.values()].map((sources): MergedRow => {
    const first = sources[0] as Source;
    const cells = layout.fields.map(([id], place) => (ofTheFirst.has(id) ? (first.cells[place] ?? null) : cellOf(sources, place, since)));
    return { ...first, cells, entities: sources.map(({ entity }) => entity) };
  });
  return rows.sort(inNaturalOrder(layout));
}
