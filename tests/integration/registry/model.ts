import { createHash } from "node:crypto";
import { fieldsOf, type TableName, tableNames, tables, type Value } from "@/lib/codebook";
import type { StrippedRows } from "@/lib/intake";

type Row = Readonly<Record<string, Value>>;
type Snapshot = ReadonlyMap<string, Row>;

const nameOf = (table: TableName, row: Row) => JSON.stringify([table, ...tables[table].key.map((id) => row[id] ?? null)]);
const tableOf = (name: string) => (JSON.parse(name) as [TableName])[0];

/** An event that names its segment in part. */
function halfNamed(table: TableName, row: Row): boolean {
  const segment = ["bone", "side", "surgeryDay"].map((id) => row[id] ?? null);
  return table === "event" && segment.includes(null) && segment.some((value) => value !== null);
}

/**
 * What the registry promises, told without versions, entities and SQL: a list of snapshots, one a batch, each a map from natural key to
 * row. Slow, plain, and written from the promises alone.
 */
export class Model {
  readonly snapshots: Snapshot[] = [new Map()];
  readonly undoes: (number | null)[] = [null];

  get now(): Snapshot {
    return this.snapshots.at(-1) ?? new Map();
  }

  /** The new batch, `null` when nothing was new, or "refused". */
  commit(rows: StrippedRows): number | null | "refused" {
    const next = new Map(this.now);
    for (const table of tableNames) {
      const sheet = new Map<string, Row>();
      for (const row of rows[table] as readonly Row[]) {
        const name = nameOf(table, row);
        const joined = join(sheet.get(name) ?? row, row);
        if (joined === "conflict") return "refused";
        sheet.set(name, joined);
      }
      for (const [name, row] of sheet) {
        const held = this.now.get(name);
        if (halfNamed(table, row)) return "refused";
        if (held && table === "person" && held.line !== row.line) return "refused";
        next.set(name, held ? over(held, row) : row);
      }
    }
    return this.touched(this.now, next).size === 0 ? null : this.add(next, null);
  }

  undo(batch: number): number | { blockedBy: readonly number[] } {
    const [before, after] = [this.snapshots[batch - 1] ?? new Map(), this.snapshots[batch] ?? new Map()];
    const own = this.touched(before, after);
    const next = new Map(this.now);
    for (const name of own) {
      const row = before.get(name);
      if (row) next.set(name, row);
      else next.delete(name);
    }
    const blocking = [...own].flatMap((name) => this.laterOf(name, batch));
    if (blocking.length > 0) return { blockedBy: [...new Set(blocking)].sort((a, b) => a - b) };
    return this.add(next, batch);
  }

  /** Standing batches after `batch` that touched a row. */
  private laterOf(name: string, batch: number): readonly number[] {
    return this.standing(batch).filter((later) =>
      this.touched(this.snapshots[later - 1] ?? new Map(), this.snapshots[later] ?? new Map()).has(name),
    );
  }

  /** Batches after `batch`, less each one that is undone by a later one and the undo itself. */
  private standing(batch: number): readonly number[] {
    let left = this.snapshots.map((_, i) => i).filter((i) => i > batch);
    for (;;) {
      // the newest undo of what is left takes its batch with it
      const undo = left.findLast((i) => left.includes(this.undoes[i] ?? -1));
      if (undo === undefined) return left;
      left = left.filter((i) => i !== undo && i !== this.undoes[undo]);
    }
  }

  private touched(before: Snapshot, after: Snapshot): ReadonlySet<string> {
    const names = new Set([...before.keys(), ...after.keys()]);
    return new Set([...names].filter((name) => JSON.stringify(before.get(name)) !== JSON.stringify(after.get(name))));
  }

  add(next: Snapshot, undoes: number | null): number {
    this.undoes.push(undoes);
    return this.snapshots.push(next) - 1;
  }
}

function join(a: Row, b: Row): Row | "conflict" {
  const entries = Object.keys(a).map((id) => [id, a[id] ?? b[id] ?? null] as const);
  return entries.some(([id, value]) => b[id] !== null && b[id] !== undefined && b[id] !== value) ? "conflict" : Object.fromEntries(entries);
}

const over = (held: Row, row: Row): Row => Object.fromEntries(Object.keys(held).map((id) => [id, row[id] ?? held[id] ?? null]));

/** Rows of a snapshot in the order of their tables and natural keys: numbers by size, texts by letter, blanks first. */
export function sorted(snapshot: Snapshot): readonly { readonly table: TableName; readonly row: Row }[] {
  const rows = [...snapshot].map(([name, row]) => ({ table: tableOf(name), row }));
  return rows.sort((a, b) => {
    if (a.table !== b.table) return tableNames.indexOf(a.table) - tableNames.indexOf(b.table);
    for (const id of tables[a.table].key) {
      const [x = null, y = null] = [a.row[id], b.row[id]];
      if (x === y) continue;
      if (x === null || y === null) return x === null ? -1 : 1;
      return x < y ? -1 : 1;
    }
    return 0;
  });
}

/** The content hash, worked out from a snapshot. */
export function hashOf(snapshot: Snapshot): string {
  const lines = sorted(snapshot).map(({ table, row }) => {
    const filled = fieldsOf(table).flatMap(([id]) => (row[id] === null || row[id] === undefined ? [] : [[id, row[id]] as const]));
    return `${JSON.stringify({ table, row: Object.fromEntries(filled) })}\n`;
  });
  return createHash("sha256").update(lines.join("")).digest("hex");
}
