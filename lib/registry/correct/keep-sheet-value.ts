import { open } from "@/db/identities";
import type { Connection } from "@/db/open";
import type { CorrectionReason, TableName } from "@/lib/codebook";
import type { Cell } from "../commit/cells";

type Named = { readonly table: TableName; readonly entity: number; readonly field: string };
type Corrected = { readonly batch: number; readonly cell: Cell; readonly sheet: Cell; readonly reason: CorrectionReason };

/**
 * Keeps what the unit's sheet said beside a correction. Of a field corrected before, it is what the sheet said then, since the sheet has not
 * changed; corrected back to that, nothing is left to remember.
 */
export function keepSheetValue(db: Connection, { table, entity, field }: Named, { batch, cell, sheet, reason }: Corrected): void {
  db.prepare("INSERT INTO correction_id (of_table, of_entity, field) VALUES (?, ?, ?) ON CONFLICT DO NOTHING").run(table, entity, field);
  const id = db
    .prepare("SELECT entity FROM correction_id WHERE of_table = ? AND of_entity = ? AND field = ?")
    .pluck()
    .get(table, entity, field);
  const standing = db.prepare(`SELECT sheet FROM correction WHERE entity = ? AND until_batch = ${open}`).get(id) as
    | { sheet: Cell }
    | undefined;
  if (standing) db.prepare(`UPDATE correction SET until_batch = ? WHERE entity = ? AND until_batch = ${open}`).run(batch, id);
  const said = standing ? standing.sheet : sheet;
  if (cell === said) return;
  db.prepare(`INSERT INTO correction (entity, since_batch, until_batch, sheet, reason) VALUES (?, ?, ${open}, ?, ?)`).run(
    id,
    batch,
    said,
    reason,
  );
}
