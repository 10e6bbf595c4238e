import { byTable, type Field, fieldsOf, type TableName, type Value } from "@/lib/codebook";

/** What is wrong with a stripped value, in words; `null` when nothing is. */
export type CellCheck = (value: Value) => string | null;

const keyed = /^[0-9A-HJKMNP-TV-Z]{26}$/;
// days of 1900-2100 less a shift of at most 36 525, or the label of an undated person's surgery (10 000 × year + episode) and days after it
const isPossibleDay = (day: number) => (day >= -65_000 && day <= 80_000) || (day >= 19_000_001 && day <= 22_080_000);

const compiled: Readonly<Record<TableName, ReadonlyMap<string, CellCheck>>> = byTable(
  (table) => new Map(fieldsOf(table).map(([id, field]) => [id, compile(field)])),
);

/** The checks of a table's fields, compiled once from the codebook, in its order. */
export function cellChecks(table: TableName): ReadonlyMap<string, CellCheck> {
  return compiled[table];
}

function compile(field: Field): CellCheck {
  const check = ofKind(field);
  const blank = field.required ? "nothing where a value is required" : null;
  return (value) => (value === null ? blank : check(value));
}

function ofKind(field: Field): CellCheck {
  switch (field.kind) {
    case "keyed":
      return (value) => (typeof value === "string" && keyed.test(value) ? null : "what is no pseudonym");
    case "code": {
      const codes: ReadonlySet<Value> = new Set(field.codes);
      return (value) => (codes.has(value) ? null : "what is no code of the field");
    }
    case "listed": {
      const form = new RegExp(field.pattern);
      return (value) => (typeof value === "string" && form.test(value) ? null : "what has not the form of a code");
    }
    case "flag":
      return (value) => (typeof value === "boolean" ? null : "what is no flag");
    case "day":
      return (value) => (isWhole(value) && isPossibleDay(value) ? null : "what is no day on a person’s line");
    case "count":
      return (value) => (isWhole(value) && isWithin(value, field.hard) ? null : "what is no whole number within the limits");
    case "number":
      return (value) =>
        typeof value === "number" && Number.isFinite(value) && isWithin(value, field.hard) ? null : "what is no number within the limits";
  }
}

function isWhole(value: Value): value is number {
  return typeof value === "number" && Number.isSafeInteger(value);
}

function isWithin(value: number, hard: readonly [number, number] | undefined): boolean {
  return !hard || (value >= hard[0] && value <= hard[1]);
}
