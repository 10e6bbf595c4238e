import { identities } from "@/db/identities";
import type { Connection } from "@/db/open";
import type { TableName } from "@/lib/codebook";
import type { StrippedRows } from "@/lib/intake";
import type { CorrectionGuard } from "../correct/guard";
import type { RowFinding } from "../errors";
import { type Cell, type Cells, type Layout, layoutOf, versionedOf } from "./cells";
import { type Merged, mergeRepeats } from "./merge-repeats";
import { type Overlay, overlayOf } from "./overlay";
import type { Parents } from "./parents";
import { halfNamed, lineDiffers } from "./refusals";
import { type Statements, statementsOf } from "./statements";
import type { Fate, TouchedSegments } from "./touched";

export type Tally = { committed: number; changed: number; unchanged: number };

/** What the writing of all tables of a batch shares. */
export type Work = {
  readonly batch: number;
  readonly parents: Parents;
  readonly touched: TouchedSegments;
  readonly findings: RowFinding[];
  /** Corrections that stand; `null`: none does. */
  readonly corrections: CorrectionGuard | null;
  /** Counts a row. */
  readonly tick: () => void;
};
type TableWork = Work & {
  readonly layout: Layout;
  readonly ownPlaces: readonly number[];
  readonly statements: Statements;
  readonly overlay: Overlay;
};

/** A person's days are dated or not, whatever file they come in. */
function changesLine({ layout }: TableWork, held: Cells, fresh: Cells): boolean {
  if (layout.table !== "person") return false;
  const place = layout.versioned.findIndex((i) => layout.fields[i]?.[0] === "line");
  const [before, now] = [held[place] ?? null, fresh[place] ?? null];
  return before !== null && now !== null && before !== now;
}

/** Writes a version of a row whose identity is known. "line-differs": a person would change the line of its days. */
function writeVersion(work: TableWork, [number = null, since = null, ...held]: Cells, fresh: Cells): Fate["outcome"] | "line-differs" {
  const { statements, batch } = work;
  const entity = Number(number);
  if (since === null) {
    statements.insert(entity, batch, fresh);
    return "committed";
  }
  if (changesLine(work, held, fresh)) return "line-differs";
  const merged = work.overlay(held, fresh);
  if (!merged) return "unchanged";
  statements.close.run(batch, entity);
  statements.insert(entity, batch, merged);
  return "changed";
}

/** @returns what became of the row, or what is wrong with it */
function writeRow(work: TableWork, { key, cells: brought, place }: Merged): Fate | RowFinding {
  const { layout, ownPlaces, statements, parents, touched, corrections } = work;
  const cells = corrections?.settle(layout, brought) ?? brought;
  const above = parents.of(layout, cells);
  if (above === "half-named") return halfNamed(layout.table, place);
  const natural: readonly Cell[] = [...above, ...ownPlaces.map((own) => cells[own] ?? null)];
  const known = touched.mayBeKnown(layout.table, above) ? (statements.find.get(...natural) as Cells | undefined) : undefined;
  const found = known ?? [statements.identify(natural)];
  const entity = Number(found[0]);
  parents.note(layout.table, key, entity);
  const outcome = writeVersion(work, found, versionedOf(layout, cells));
  return outcome === "line-differs" ? lineDiffers(place) : { entity, above, outcome };
}

/**
 * Writes the rows of a table into a batch: a new natural key becomes an identity with its first version, a held one gets a new version
 * where a value that isn't blank differs. What can't be taken is added to the work's findings; the caller then undoes the whole.
 * `skip`: places of rows that are left out.
 */
export function writeTable(
  db: Connection,
  table: TableName,
  rows: StrippedRows[TableName],
  work: Work,
  skip: ReadonlySet<number> = new Set(),
): Tally {
  const tally: Tally = { committed: 0, changed: 0, unchanged: 0 };
  if (rows.length === 0) return tally;
  const layout = layoutOf(table);
  const own: readonly string[] = identities[table].own;
  const ownPlaces = own.map((id) => layout.fields.findIndex(([field]) => field === id));
  const tableWork: TableWork = { ...work, layout, ownPlaces, statements: statementsOf(db, table), overlay: overlayOf(layout) };
  for (const merged of mergeRepeats(layout, rows, work.findings, skip)) {
    const fate = writeRow(tableWork, merged);
    work.tick();
    if ("code" in fate) work.findings.push(fate);
    else {
      work.touched.note(table, fate);
      tally[fate.outcome] += 1;
    }
  }
  tableWork.statements.flush();
  return tally;
}
