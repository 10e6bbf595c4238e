import { byTable, type TableName, tableNames } from "@/lib/codebook";
import type { Finding, StrippedRows } from "@/lib/intake";
import { type RowFinding, RowsRefused } from "../errors";

/** Intake's own check of stripped rows. */
export type Check = (rows: StrippedRows) => readonly Finding[];
type Bars = (finding: Finding) => boolean;

const noRows: StrippedRows = byTable((): readonly never[] => []);
type AnyRow = Readonly<Record<string, unknown>>;
const nameOf = ({ person, bone, side, surgeryDay }: AnyRow) => `${person}|${bone}|${side}|${surgeryDay}`;

/** Rows of a table one by one, each with its person and segment where they are among the rows and have no fault themselves. */
function* alone(rows: StrippedRows, table: TableName, sound: (table: TableName, name: string) => object | undefined) {
  for (const [place, row] of (rows[table] as readonly AnyRow[]).entries()) {
    const person = table === "person" ? undefined : sound("person", String(row.person));
    const segment = table === "visit" || table === "event" ? sound("segment", nameOf(row)) : undefined;
    const above = { ...(person ? { person: [person] } : {}), ...(segment ? { segment: [segment] } : {}) };
    yield { place, row, rows: { ...noRows, ...above, [table]: [row] } as StrippedRows };
  }
}

/**
 * Findings that bar a commit, each with its row. The check says what is wrong with rows, not with which: they are looked at one by one.
 * What no row shows alone stands without one.
 */
export function located(rows: StrippedRows, check: Check, bars: Bars): readonly RowFinding[] {
  const sound = new Map<string, object>();
  const found: RowFinding[] = [];
  for (const table of tableNames) {
    for (const { place, row, rows: one } of alone(rows, table, (of, name) => sound.get(`${of} ${name}`))) {
      const own = check(one).filter(bars);
      found.push(...own.map((finding) => ({ ...finding, table, place })));
      if (own.length === 0) sound.set(`${table} ${table === "person" ? row.person : nameOf(row)}`, row);
    }
  }
  if (found.length > 0) return found;
  return check(rows)
    .filter(bars)
    .map((finding) => ({ ...finding, table: null, place: null }));
}

/**
 * Checks rows as they were brought. An `ask` bars them as an error does: its answer would have changed the row, so nobody gave one. What
 * can't be seen in a row afterwards (near duplicates, numbers that differ by zeros) is asked in the tab alone.
 * @throws RowsRefused
 */
export function requireChecked(rows: StrippedRows, check: Check): void {
  const bars: Bars = ({ severity }) => severity === "error" || severity === "ask";
  if (check(rows).some(bars)) throw new RowsRefused(located(rows, check, bars));
}
