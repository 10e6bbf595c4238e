import { fieldsOf, type Rows, type TableName, tableNames } from "@/lib/codebook";
import type { Stripped, StrippedRows } from "@/lib/intake";

// Invented rows for the registry's tests, in the form that the strip step makes. They claim nothing about anybody's outcomes.

/** A row of a table with the given fields, every other blank. */
export function row<T extends TableName>(table: T, fields: Partial<Rows[T]>): Stripped<T> {
  const blanks = Object.fromEntries(fieldsOf(table).map(([id]) => [id, null]));
  return { ...blanks, ...fields } as unknown as Stripped<T>;
}

export const personKey = (n: number) => n.toString().padStart(26, "0");

export const aPerson = (n: number, fields: Partial<Rows["person"]> = {}) =>
  row("person", { person: personKey(n), unit: "unit-1", line: "dated", ...fields });

export const aSegment = (n: number, fields: Partial<Rows["segment"]> = {}) =>
  row("segment", { person: personKey(n), bone: "femur", side: "left", surgeryDay: 1000, surgeryYear: 2020, ...fields });

export const aVisit = (n: number, visitDay: number, fields: Partial<Rows["visit"]> = {}) =>
  row("visit", { person: personKey(n), bone: "femur", side: "left", surgeryDay: 1000, visitDay, ...fields });

export const anEvent = (n: number, fields: Partial<Rows["event"]> = {}) =>
  row("event", { person: personKey(n), eventType: "stiffness", eventNumber: 1, ...fields });

/** All tables, those left out empty. */
export function rowsOf(rows: Partial<StrippedRows>): StrippedRows {
  return { ...(Object.fromEntries(tableNames.map((table) => [table, []])) as unknown as StrippedRows), ...rows };
}

/** So many persons with one segment each. */
export function manyRows(persons: number): StrippedRows {
  const people = Array.from({ length: persons }, (_, i) => i + 10);
  return rowsOf({ person: people.map((n) => aPerson(n)), segment: people.map((n) => aSegment(n, { gainMm: 50 })) });
}
