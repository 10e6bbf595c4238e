import { type TableName, tables, type Value } from "@/lib/codebook";
import { cellChecks } from "../check/cell-check";
import { blankRow } from "../prepare/blank-row";
import type { Stripped } from "../types";
import { type CommitHead, headSchema } from "./head";
import { WireError } from "./wire-error";

export type CommitLine =
  | { readonly kind: "head"; readonly head: CommitHead }
  | { [T in TableName]: { readonly kind: "row"; readonly table: T; readonly row: Stripped<T> } }[TableName]
  | { readonly kind: "end"; readonly rows: number };

const longestLine = 20_000;

/**
 * One line of a commit, checked on arrival: only fields of the codebook, only stripped kinds. `lineNumber` 1 is the head.
 * @throws WireError naming line, field and kind of the fault, never the value
 */
export function decodeLine(line: string, lineNumber: number): CommitLine {
  if (line.length > longestLine) throw new WireError(lineNumber, null, "a line that is too long");
  const json = parse(line, lineNumber);
  if (lineNumber === 1) return { kind: "head", head: headOf(json, lineNumber) };
  const { table, row, end, ...more } = json;
  if (Object.keys(more).length > 0) throw new WireError(lineNumber, null, "a line of another shape");
  if (end !== undefined && table === undefined && row === undefined) return { kind: "end", rows: countOf(end, lineNumber) };
  if (end !== undefined || typeof table !== "string" || !Object.hasOwn(tables, table))
    throw new WireError(lineNumber, null, "a line of another shape");
  // the checks below are what makes the row a stripped one
  return { kind: "row", table, row: rowOf(table as TableName, row, lineNumber) } as CommitLine;
}

function parse(line: string, lineNumber: number): Record<string, unknown> {
  try {
    const json: unknown = JSON.parse(line);
    if (isRecord(json)) return json;
  } catch {
    // falls through: what stood there isn't repeated
  }
  throw new WireError(lineNumber, null, "a line that is no JSON object");
}

function headOf(json: unknown, lineNumber: number): CommitHead {
  const result = headSchema.safeParse(json);
  // the schema's own optional holds `undefined` where the type has no key
  if (result.success) return result.data as CommitHead;
  throw new WireError(lineNumber, nameOf(result.error.issues[0]?.path[0]), "a head of another shape");
}

/** Only the head's own names are repeated: a key further in could be anything. */
function nameOf(key: PropertyKey | undefined): string | null {
  return typeof key === "string" && key in headSchema.shape ? key : null;
}

function countOf(value: unknown, lineNumber: number): number {
  if (typeof value === "number" && Number.isSafeInteger(value) && value >= 0) return value;
  throw new WireError(lineNumber, "end", "what is no count of rows");
}

function rowOf(table: TableName, value: unknown, lineNumber: number): Record<string, Value> {
  if (!isRecord(value)) throw new WireError(lineNumber, null, "a row that is no JSON object");
  const checks = cellChecks(table);
  for (const field of Object.keys(value)) if (!checks.has(field)) throw new WireError(lineNumber, null, "a field that the codebook hasn't");
  const row = blankRow(table);
  for (const [field, check] of checks) {
    const held = (Object.hasOwn(value, field) ? value[field] : null) as Value;
    const fault = check(held);
    if (fault !== null) throw new WireError(lineNumber, field, fault);
    row[field] = held;
  }
  return row;
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
