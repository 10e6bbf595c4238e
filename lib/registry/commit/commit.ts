import { open } from "@/db/identities";
import type { Connection } from "@/db/open";
import { type TableName, tableNames } from "@/lib/codebook";
import type { Finding, StrippedRows, UnitKeyRecord } from "@/lib/intake";
import { addCounts, countsOf, sumOf } from "../counts";
import { RowsRefused } from "../errors";
import { requireAt } from "../keep/at";
import { enterBatch, enterFindings, newestBatch } from "../keep/ledger";
import { keepUnitKey } from "../keep/unit-key";
import { hashAsOf } from "../read/content-hash";
import type { CommitResult, FindingCounts } from "../types";
import { parentsIn } from "./parents";
import { settleFinals } from "./settle-finals";
import { type Tally, type Work, writeTable } from "./write-table";

export type CommitOptions = {
  /** UTC, whole seconds. */
  readonly at: string;
  /** How often each finding stood in the tab when the person committed. */
  readonly findings?: FindingCounts;
  /** The unit's key as the first intake sealed it. */
  readonly unitKey?: UnitKeyRecord;
};
type Written = Pick<CommitResult, "committed" | "changed" | "unchanged">;
/** Intake's own check of stripped rows. */
export type Check = (rows: StrippedRows) => readonly Finding[];

function requireNoErrors(findings: readonly Finding[]): void {
  const errors = findings.filter(({ severity }) => severity === "error");
  if (errors.length > 0) throw new RowsRefused(errors);
}

/** Writes the body measures, less final ones that repeat an earlier one; a held one that turns out to be such is closed. */
function writeBodyMeasures(db: Connection, rows: StrippedRows["bodyMeasure"], work: Work): Tally {
  const { rows: left, repeated, closed } = settleFinals(db, rows);
  const close = db.prepare(`UPDATE body_measure SET until_batch = ? WHERE entity = ? AND until_batch = ${open}`);
  for (const entity of closed) close.run(work.batch, entity);
  const tally = writeTable(db, "bodyMeasure", left, work);
  return { ...tally, changed: tally.changed + closed.length, unchanged: tally.unchanged + repeated };
}

/** Writes the tables, parents before children, and counts what became of their rows. */
function writeAll(db: Connection, rows: StrippedRows, batch: number): Written {
  const findings: Finding[] = [];
  const work: Work = { batch, parents: parentsIn(db), findings };
  const write = (table: TableName) =>
    table === "bodyMeasure" ? writeBodyMeasures(db, rows.bodyMeasure, work) : writeTable(db, table, rows[table], work);
  const tallies = new Map(tableNames.map((table) => [table, write(table)]));
  requireNoErrors(findings);
  const count = (outcome: keyof Tally) => countsOf((table) => tallies.get(table)?.[outcome] ?? 0);
  return { committed: count("committed"), changed: count("changed"), unchanged: count("unchanged") };
}

/**
 * Commits stripped rows as one batch, within the caller's transaction. Nothing changed → no version; nothing new at all → no batch.
 * @throws RowsRefused when the check, run again here, or the rows held find an error
 * @throws UnitKeyRefused when a key is brought that isn't the registry's
 */
export function commitRows(db: Connection, rows: StrippedRows, { at, findings = {}, unitKey }: CommitOptions, check: Check): CommitResult {
  requireAt(at);
  requireNoErrors(check(rows));
  if (unitKey) keepUnitKey(db, unitKey);
  const newest = newestBatch(db);
  const batch = (newest?.batch ?? 0) + 1;
  const written = writeAll(db, rows, batch);
  const counts = addCounts(written.committed, written.changed);
  if (sumOf(counts) === 0) return { batch: null, ...written, contentHash: newest?.contentHash ?? hashAsOf(db, 0) };
  const contentHash = hashAsOf(db, batch);
  enterBatch(db, { batch, kind: "intake", at, counts, contentHash, undoes: null });
  enterFindings(db, batch, findings);
  return { batch, ...written, contentHash };
}
