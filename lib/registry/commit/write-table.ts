import { identities, open } from "@/db/identities";
import type { Connection } from "@/db/open";
import type { TableName } from "@/lib/codebook";
import type { Finding, StrippedRows } from "@/lib/intake";
import { type Cell, type Cells, type Layout, layoutOf } from "./cells";
import { type Merged, mergeRepeats } from "./merge-repeats";
import { type Overlay, overlayOf } from "./overlay";
import type { Parents } from "./parents";
import { halfNamed, lineDiffers } from "./refusals";
import { type Statements, statementsOf } from "./statements";

export type Tally = { committed: number; changed: number; unchanged: number };
type Outcome = keyof Tally | "refused";

/** What the writing of all tables of a batch shares. */
export type Work = { readonly batch: number; readonly parents: Parents; readonly findings: Finding[] };
type TableWork = Work & {
  readonly layout: Layout;
  readonly ownPlaces: readonly number[];
  readonly statements: Statements;
  readonly overlay: Overlay;
};

/** A person's days are dated or not, whatever file they come in. */
function changesLine({ layout, findings }: TableWork, held: Cells, fresh: Cells): boolean {
  if (layout.table !== "person") return false;
  const place = layout.versioned.findIndex((i) => layout.fields[i]?.[0] === "line");
  const [before, now] = [held[place] ?? null, fresh[place] ?? null];
  if (before === null || now === null || before === now) return false;
  findings.push(lineDiffers());
  return true;
}

function writeFound(work: TableWork, [entity = null, since = null, ...held]: Cells, fresh: Cells): Outcome {
  const { statements, batch } = work;
  if (since === null) {
    statements.insert.run(entity, batch, open, ...fresh);
    return "committed";
  }
  if (changesLine(work, held, fresh)) return "refused";
  const merged = work.overlay(held, fresh);
  if (!merged) return "unchanged";
  statements.close.run(batch, entity);
  statements.insert.run(entity, batch, open, ...merged);
  return "changed";
}

function writeRow(work: TableWork, { key, cells }: Merged): Outcome {
  const { layout, ownPlaces, statements, batch, parents, findings } = work;
  const above = parents.of(layout, cells);
  if (above === "half-named") {
    findings.push(halfNamed(layout.table));
    return "refused";
  }
  const natural: readonly Cell[] = [...above, ...ownPlaces.map((place) => cells[place] ?? null)];
  const fresh = layout.versioned.map((place) => cells[place] ?? null);
  const found = statements.find.get(...natural) as Cells | undefined;
  if (found) {
    parents.note(layout.table, key, Number(found[0]));
    return writeFound(work, found, fresh);
  }
  const entity = Number(statements.identify.run(...natural).lastInsertRowid);
  parents.note(layout.table, key, entity);
  statements.insert.run(entity, batch, open, ...fresh);
  return "committed";
}

/**
 * Writes the rows of a table into a batch: a new natural key becomes an identity with its first version, a held one gets a new version
 * where a value that isn't blank differs. What can't be taken is added to the work's findings; the caller then undoes the whole.
 */
export function writeTable(db: Connection, table: TableName, rows: StrippedRows[TableName], work: Work): Tally {
  const tally: Tally = { committed: 0, changed: 0, unchanged: 0 };
  if (rows.length === 0) return tally;
  const layout = layoutOf(table);
  const own: readonly string[] = identities[table].own;
  const ownPlaces = own.map((id) => layout.fields.findIndex(([field]) => field === id));
  const tableWork: TableWork = { ...work, layout, ownPlaces, statements: statementsOf(db, table), overlay: overlayOf(layout) };
  for (const merged of mergeRepeats(layout, rows, work.findings)) {
    const outcome = writeRow(tableWork, merged);
    if (outcome !== "refused") tally[outcome] += 1;
  }
  return tally;
}
