import { open, versionTable } from "@/db/identities";
import type { Connection } from "@/db/open";
import {
  byTable,
  type CorrectionReason,
  correctionReasons,
  type Field,
  fieldsOf,
  snake,
  type TableName,
  tableNames,
  type Value,
  versionedFieldsOf,
} from "@/lib/codebook";
import { cellChecks, type Finding, type StrippedRows } from "@/lib/intake";
import type { Cell } from "../commit/cells";
import { type Check, located } from "../commit/check-brought";
import { refusal } from "../commit/refusals";
import { countsOf } from "../counts";
import { RowsRefused } from "../errors";
import { joinsAsOf, rootOf } from "../join/groups";
import { joinViewAsOf } from "../join/join-view";
import { requireAt } from "../keep/at";
import { enterBatch, newestBatch } from "../keep/ledger";
import { hashAsOf } from "../read/content-hash";
import { keyOfRow } from "../read/row-sql";
import { rowsOfCase } from "../read/rows-of-case";
import { keepSheetValue } from "./keep-sheet-value";

export type CorrectOptions = {
  readonly table: TableName;
  /** The row, by its entity. */
  readonly entity: number;
  readonly field: string;
  /** What holds from now on; a day on the patient's line. `null` clears. */
  readonly value: Value;
  readonly reason: CorrectionReason;
  readonly at: string;
};
/** `batch: null`: it was so already. */
export type CorrectResult = { readonly batch: number | null; readonly contentHash: string };

/** Fields that can be corrected: those that a sheet says of a row, but not what names the row, and not what only the key can make. */
export function isCorrectable(table: TableName, id: string): boolean {
  const field = versionedFieldsOf(table).find(([own]) => own === id)?.[1];
  return field !== undefined && !field.madeByStrip && field.kind !== "keyed" && field.kind !== "listed";
}

function requireCorrectable({ table, field, value, reason }: CorrectOptions): void {
  if (!tableNames.includes(table) || !isCorrectable(table, field))
    throw new RangeError(
      "correct requires a field that a sheet says of a row, received one that names the row, is made from others, or isn't one",
    );
  if (!correctionReasons.includes(reason))
    throw new RangeError(`correct requires a reason among ${correctionReasons.join(", ")}, received another`);
  const fault = cellChecks(table).get(field)?.(value) ?? null;
  if (fault === null) return;
  const code = value === null ? "required-missing" : "out-of-hard-range";
  const where = { table, place: null, field };
  throw new RowsRefused([refusal(code, where, [fault, "a value within the codebook's limits", "type another value"])]);
}

function cellOf(field: Field, value: Value, days: number): Cell {
  if (typeof value === "boolean") return value ? 1 : 0;
  return field.kind === "day" && typeof value === "number" ? value - days : value;
}

/** The patient of a row: the first of its numbers, and how far the row's own line lies from that one's. */
function patientOf(db: Connection, batch: number, table: TableName, entity: number): { readonly entity: number; readonly days: number } {
  const [person] = (db.prepare(keyOfRow(table)).raw().get(entity) ?? []) as Cell[];
  if (typeof person !== "number") throw new RangeError("correct requires a row that is held, received one that isn't");
  return rootOf(joinsAsOf(db, batch), person);
}

/** The identities under which a patient's numbers hold the row: the row itself first. */
function entitiesOf(db: Connection, batch: number, table: TableName, entity: number, patient: number): readonly number[] {
  const view = joinViewAsOf(db, batch);
  const group = view?.groupOf(patient);
  const merged = group && view?.rowsOf(table, group).find(({ entities }) => entities.includes(entity));
  return merged ? [entity, ...merged.entities.filter((other) => other !== entity)] : [entity];
}

/** Writes a version with one field changed; what was held of it. Undefined: the row isn't held, or says so already. */
function writeField(db: Connection, batch: number, table: TableName, entity: number, id: string, cell: Cell): Cell | undefined {
  const [name, columns] = [versionTable(table), versionedFieldsOf(table).map(([own]) => snake(own))];
  const column = snake(id);
  const held = db.prepare(`SELECT ${column} AS cell FROM ${name} WHERE entity = ? AND until_batch = ${open}`).get(entity) as
    | { cell: Cell }
    | undefined;
  if (!held || held.cell === cell) return undefined;
  db.prepare(`UPDATE ${name} SET until_batch = ? WHERE entity = ? AND until_batch = ${open}`).run(batch, entity);
  const changed = columns.map((own) => (own === column ? "@cell" : own)).join(", ");
  db.prepare(
    `INSERT INTO ${name} (entity, since_batch, until_batch, ${columns.join(", ")})
     SELECT entity, @batch, ${open}, ${changed} FROM ${name} WHERE entity = @entity AND until_batch = @batch`,
  ).run({ batch, entity, cell });
  return held.cell;
}

function rowsForCheck(db: Connection, patient: number, batch: number): StrippedRows {
  const rows = byTable((): object[] => []);
  for (const { table, row } of rowsOfCase(db, patient, batch)) rows[table].push(row);
  return rows as Record<TableName, readonly object[]> as StrippedRows;
}

/** What no sheet may say, a correction may not say either. @throws RowsRefused */
function requireSound(before: StrippedRows, after: StrippedRows, check: Check): void {
  const isError = ({ severity }: Finding) => severity === "error";
  const known = new Set(
    check(before)
      .filter(isError)
      .map(({ code, field }) => `${code} ${field}`),
  );
  const isNew = (finding: Finding) => isError(finding) && !known.has(`${finding.code} ${finding.field}`);
  if (check(after).some(isNew)) throw new RowsRefused(located(after, check, isNew));
}

/**
 * Corrects one field of a row by hand, within the caller's transaction. It holds until the sheet's own value changes. Clearing a field
 * clears it under every number of the patient that holds it.
 * @throws RowsRefused for a value that no sheet may say either; RangeError for a row or field that can't be corrected
 */
export function correctField(db: Connection, options: CorrectOptions, check: Check): CorrectResult {
  const { table, entity, field: id, value, reason, at } = options;
  requireAt(at);
  requireCorrectable(options);
  const newest = newestBatch(db);
  const batch = (newest?.batch ?? 0) + 1;
  const field = fieldsOf(table).find(([own]) => own === id)?.[1] as Field;
  const patient = patientOf(db, batch - 1, table, entity);
  const before = rowsForCheck(db, patient.entity, batch - 1);
  const entities = entitiesOf(db, batch - 1, table, entity, patient.entity);
  let written = 0;
  for (const own of value === null ? entities : entities.slice(0, 1)) {
    const { days } = patientOf(db, batch - 1, table, own);
    const cell = cellOf(field, value, days);
    const sheet = writeField(db, batch, table, own, id, cell);
    if (sheet === undefined) continue;
    keepSheetValue(db, { table, entity: own, field: id }, { batch, cell, sheet, reason });
    written += 1;
  }
  if (written === 0) return { batch: null, contentHash: newest?.contentHash ?? hashAsOf(db, 0) };
  requireSound(before, rowsForCheck(db, patient.entity, batch), check);
  const contentHash = hashAsOf(db, batch);
  const counts = countsOf((one) => (one === table ? written : 0));
  enterBatch(db, { batch, kind: "correction", at, counts, contentHash, undoes: null });
  return { batch, contentHash };
}
