import { open } from "@/db/identities";
import type { Connection } from "@/db/open";
import { snake, versionedFieldsOf } from "@/lib/codebook";
import type { StrippedRows } from "@/lib/intake";
import { type Cell, type Cells, cellsOf, type Layout, layoutOf } from "./cells";

type Row = StrippedRows["bodyMeasure"][number];
type Final = { readonly day: number; readonly cells: Cells; readonly row?: Row; readonly entity?: number };

export type SettledFinals = {
  /** Places of the rows that are not to be written: final measures that repeat an earlier one. */
  readonly skip: ReadonlySet<number>;
  /** How many are left out and were never held. */
  readonly repeated: number;
  /** Held measures that turn out to repeat an earlier one, now that the earlier one is known. */
  readonly closed: readonly number[];
};

const isFinal = (row: Row) => row.occasion === "final" && row.bodyDayFrom === "last-follow-up";
const layout: Layout = layoutOf("bodyMeasure");
const columns = versionedFieldsOf("bodyMeasure").map(([id]) => `v.${snake(id)}`);

const heldFinals = `SELECT i.entity, i.body_day, ${columns.join(", ")} FROM person_id p
  JOIN body_measure_id i ON i.person_entity = p.entity JOIN body_measure v ON v.entity = i.entity AND v.until_batch = ${open}
  WHERE p.person = ? AND v.occasion = 'final' AND v.body_day_from = 'last-follow-up'`;

const versionedCells = (row: Row): Cells => {
  const cells = cellsOf(layout, row);
  return layout.versioned.map((place) => cells[place] ?? null);
};

const over = (held: Cells, fresh: Cells): Cells => held.map((cell, i) => fresh[i] ?? cell);
const same = (a: Cells, b: Cells) => a.every((cell, i) => cell === b[i]);

function byPerson(rows: readonly Row[]): ReadonlyMap<string, readonly Row[]> {
  const people = new Map<string, Row[]>();
  for (const row of rows) {
    if (!isFinal(row)) continue;
    const own = people.get(row.person);
    if (own) own.push(row);
    else people.set(row.person, [row]);
  }
  return people;
}

/** Held and new final measures of a person, one a day, by day. */
function finalsOf(held: readonly Final[], rows: readonly Row[]): readonly Final[] {
  const days = new Map(held.map((final) => [final.day, final]));
  for (const row of rows) {
    const before = days.get(row.bodyDay);
    const cells = versionedCells(row);
    days.set(row.bodyDay, { ...before, day: row.bodyDay, row, cells: before ? over(before.cells, cells) : cells });
  }
  return [...days.values()].sort((a, b) => a.day - b.day);
}

/** Those that say the same as the one before them. */
function repeatsIn(finals: readonly Final[]): readonly Final[] {
  let kept: Final | undefined;
  return finals.filter((final) => {
    if (kept && same(kept.cells, final.cells)) return true;
    kept = final;
    return false;
  });
}

/**
 * A yearly sheet repeats a final height on a day last seen that moves on: an equal value on a later day adds no row. The first of such
 * days is kept whichever sheet comes first, so that the order of sheets can't matter.
 */
export function settleFinals(db: Connection, rows: readonly Row[]): SettledFinals {
  const find = db.prepare(heldFinals).raw();
  const anyHeld = db.prepare("SELECT EXISTS (SELECT 1 FROM body_measure)").pluck().get() === 1;
  const repeats = [...byPerson(rows)].flatMap(([person, own]) => {
    const found = anyHeld ? (find.all(person) as Cell[][]) : [];
    const held = found.map(([entity, day, ...cells]) => ({ entity: Number(entity), day: Number(day), cells }));
    return repeatsIn(finalsOf(held, own));
  });
  const days = new Set(repeats.filter(({ row }) => row).map(({ row, day }) => `${row?.person}|${day}`));
  const skip = new Set(rows.flatMap((row, place) => (isFinal(row) && days.has(`${row.person}|${row.bodyDay}`) ? [place] : [])));
  const repeated = repeats.filter(({ entity }) => entity === undefined).length;
  return { skip, repeated, closed: repeats.flatMap(({ entity }) => (entity === undefined ? [] : [entity])) };
}
