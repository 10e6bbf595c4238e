import { open } from "@/db/identities";
import type { Connection } from "@/db/open";
import { type FindingCode, type TableName, tableNames } from "@/lib/codebook";
import type { StrippedRows, UnitKeyRecord } from "@/lib/intake";
import { type CorrectionGuard, correctionGuard } from "../correct/guard";
import { addCounts, countsOf, sumOf } from "../counts";
import { RowsRefused } from "../errors";
import { requireAt } from "../keep/at";
import { enterBatch, enterFindings, newestBatch } from "../keep/ledger";
import { settingsAsOf } from "../keep/settings";
import { keepUnitKey } from "../keep/unit-key";
import { type OnPace, tickOf } from "../pace";
import { hashAsOf } from "../read/content-hash";
import type { CommitResult, FindingCounts, Settings } from "../types";
import { type Check, requireChecked } from "./check-brought";
import { requireMerged } from "./check-merged";
import { notListedIn } from "./listed";
import { parentsIn } from "./parents";
import { correctionsDiffer } from "./refusals";
import { settleFinals } from "./settle-finals";
import { touchedIn } from "./touched";
import { type Tally, type Work, writeTable } from "./write-table";

export type CommitOptions = {
  /** UTC, whole seconds. */
  readonly at: string;
  /** How often each finding stood in the tab when the person committed: told by the tab, and kept as told. */
  readonly findings?: FindingCounts;
  /** The unit's key as the first intake sealed it. */
  readonly unitKey?: UnitKeyRecord;
  /** How many cells say something else than a correction and the sheet before it, and are to be taken: a person was asked and chose the sheet. */
  readonly overCorrections?: number;
  /** Hears how far the commit is. */
  readonly onPace?: OnPace;
};
type Written = Pick<CommitResult, "committed" | "changed" | "unchanged">;

/** Writes the body measures, less final ones that repeat an earlier one; a held one that turns out to be such is closed. */
function writeBodyMeasures(db: Connection, rows: StrippedRows["bodyMeasure"], work: Work): Tally {
  const { skip, repeated, closed } = settleFinals(db, rows);
  const close = db.prepare(`UPDATE body_measure SET until_batch = ? WHERE entity = ? AND until_batch = ${open}`);
  for (const entity of closed) close.run(work.batch, entity);
  const tally = writeTable(db, "bodyMeasure", rows, work, skip);
  return { ...tally, changed: tally.changed + closed.length, unchanged: tally.unchanged + repeated };
}

/** Writes the tables, parents before children, and counts what became of their rows. @throws RowsRefused */
function writeAll(db: Connection, rows: StrippedRows, work: Work): Written {
  const write = (table: TableName) =>
    table === "bodyMeasure" ? writeBodyMeasures(db, rows.bodyMeasure, work) : writeTable(db, table, rows[table], work);
  const tallies = new Map(tableNames.map((table) => [table, write(table)]));
  if (work.findings.length > 0) throw new RowsRefused(work.findings);
  const count = (outcome: keyof Tally) => countsOf((table) => tallies.get(table)?.[outcome] ?? 0);
  return { committed: count("committed"), changed: count("changed"), unchanged: count("unchanged") };
}

function requireListed(rows: StrippedRows, settings: Settings): void {
  const findings = notListedIn(rows, settings);
  if (findings.length > 0) throw new RowsRefused(findings);
}

/** Corrections made since the person was asked would be taken over unseen. */
function requireTaken(corrections: CorrectionGuard | null, asked: number): void {
  const taken = corrections?.taken() ?? 0;
  if (taken !== (corrections ? asked : 0) || (asked > 0 && !corrections)) throw new RowsRefused([correctionsDiffer(taken, asked)]);
}

function sumOfFindings(a: FindingCounts, b: FindingCounts): FindingCounts {
  const codes = [...new Set([...Object.keys(a), ...Object.keys(b)])] as FindingCode[];
  return Object.fromEntries(codes.map((code) => [code, (a[code] ?? 0) + (b[code] ?? 0)]));
}

/**
 * Commits stripped rows as one batch, within the caller's transaction. Nothing changed → no version; nothing new at all → no batch.
 * @throws RowsRefused when the check of the rows as brought and as merged, the unit's lists or the rows held find an error
 * @throws UnitKeyRefused when a key is brought that isn't the registry's
 */
export function commitRows(db: Connection, rows: StrippedRows, options: CommitOptions, check: Check): CommitResult {
  const { at, findings = {}, unitKey, overCorrections = 0, onPace } = options;
  requireAt(at);
  requireChecked(rows, check);
  const newest = newestBatch(db);
  requireListed(rows, settingsAsOf(db, newest?.batch ?? 0));
  if (unitKey) keepUnitKey(db, unitKey);
  const batch = (newest?.batch ?? 0) + 1;
  const corrections = correctionGuard(db, batch, { take: overCorrections > 0 });
  const tick = tickOf(onPace, "write", () => tableNames.reduce((sum, table) => sum + rows[table].length, 0));
  const work: Work = { batch, parents: parentsIn(db), touched: touchedIn(db), findings: [], corrections, tick };
  const written = writeAll(db, rows, work);
  requireTaken(corrections, overCorrections);
  const heldBack = corrections?.heldBack() ?? 0;
  const kept: FindingCounts = heldBack === 0 ? {} : { "changed-since-last": heldBack };
  const counts = addCounts(written.committed, written.changed);
  if (sumOf(counts) === 0) return { batch: null, ...written, asks: kept, contentHash: newest?.contentHash ?? hashAsOf(db, 0) };
  const asks = sumOfFindings(kept, requireMerged(db, { batch, touched: work.touched.segments, onPace }, rows, check));
  const contentHash = hashAsOf(db, batch, onPace);
  enterBatch(db, { batch, kind: "intake", at, counts, contentHash, undoes: null });
  enterFindings(db, batch, sumOfFindings(findings, asks));
  return { batch, ...written, asks, contentHash };
}
