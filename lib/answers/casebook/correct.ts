import { type CorrectionReason, type Field, fieldOf, type TableName, type Value } from "@/lib/codebook";
import { type CorrectResult, isCorrectable, type Registry } from "@/lib/registry";
import { rowsByTable } from "./case/rows-of-case";
import { firstSurgery, zeroFor } from "./case/zero";

/** A field of a case as a person names and types it: a day as days from surgery, a blank to clear. */
export type CaseCorrectionAsked = {
  readonly case: number;
  readonly table: TableName;
  readonly entity: number;
  readonly field: string;
  readonly typed: string;
  readonly reason: CorrectionReason;
  readonly at: string;
};

/** What was typed can't be a value of the field: what the field takes instead. What was typed is not repeated. */
export class TypedWrongly extends Error {
  override readonly name = "TypedWrongly";
}

/**
 * Corrects one field of a case.
 * @throws TypedWrongly; RowsRefused for a value that no sheet may say either; RangeError for a case, row or field that isn't there
 */
export async function correctCase(registry: Registry, asked: CaseCorrectionAsked): Promise<CorrectResult> {
  const { table, entity, field, reason, at } = asked;
  const held = await registry.rowsOf(asked.case);
  const rows = rowsByTable(held);
  const row = held.find((one) => one.table === table && one.entity === entity);
  if (!rows || !row) throw new RangeError("correctCase requires a row of the case, received one of another or none");
  if (!isCorrectable(table, field)) throw new RangeError("correctCase requires a field that a sheet says of the row, received another");
  const value = valueTyped(fieldOf(table, field), asked.typed, zeroFor(row.row, firstSurgery(rows)));
  return registry.correct({ table, entity, field, value, reason, at });
}

/** Reads what a person typed for a field; nothing typed clears it. @throws TypedWrongly */
function valueTyped(field: Field, typed: string, zero: number | null): Value {
  const text = typed.trim();
  if (text === "") return null;
  switch (field.kind) {
    case "code":
      return oneOf(field.codes, text);
    case "flag":
      return oneOf(["yes", "no"], text) === "yes";
    case "day":
      if (zero === null) throw new TypedWrongly("A day of this row can’t be counted from a surgery. Correct it in the sheet.");
      return zero + numberTyped(text, "a whole number of days from surgery");
    case "count":
    case "number":
      return numberTyped(text, field.kind === "count" ? "a whole number" : `a number${field.unit === "points" ? "" : ` of ${field.unit}`}`);
    default:
      throw new TypedWrongly("This field can’t be corrected by hand.");
  }
}

function oneOf(codes: readonly string[], text: string): string {
  const code = codes.find((one) => one === text);
  if (code === undefined) throw new TypedWrongly(`Choose one of ${codes.join(", ")}.`);
  return code;
}

function numberTyped(text: string, expected: string): number {
  const plain = text.replace("−", "-").replace(",", ".");
  const number = /^-?\d{1,9}(\.\d{1,6})?$/.test(plain) ? Number(plain) : Number.NaN;
  if (Number.isNaN(number) || (expected.startsWith("a whole") && !Number.isInteger(number))) throw new TypedWrongly(`Type ${expected}.`);
  return number;
}
