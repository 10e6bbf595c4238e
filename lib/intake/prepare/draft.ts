import type { TableName, Value } from "@/lib/codebook";
import type { Fact, RawDay } from "../cells/cell-read";
import type { Moment } from "../match/target";

/** Values of one row of one table, before the strip step: days are still dates. It never leaves intake. */
export type Part = {
  readonly table: TableName;
  readonly moment: Moment | null;
  readonly number: number | null;
  /** A field that nothing was read for is absent or `undefined`. */
  readonly values: Values;
};
export type Values = { [field: string]: Value | RawDay | undefined };

export type PlacedFact = Fact & { readonly column: string | null; readonly field: string | null };

/** One row of a file as read: the person it names, and the parts that go to each table. */
export type Draft = {
  readonly file: string;
  readonly row: number;
  /** Place of the row in its sheet. */
  readonly index: number;
  unit: string | null;
  localId: string;
  birth: number | null;
  surgeon: string | null;
  /** A complication column says that none was found. */
  noEvents: boolean;
  readonly parts: Part[];
  readonly facts: PlacedFact[];
};

export function newDraft(file: string, row: number, index: number): Draft {
  return { file, row, index, unit: null, localId: "", birth: null, surgeon: null, noEvents: false, parts: [], facts: [] };
}

/** The part of a draft for a table, moment and number, made where there is none; `template`: its fields, so that it needn't grow one by one. */
export function partOf(
  draft: Draft,
  table: TableName,
  moment: Moment | null = null,
  number: number | null = null,
  template: Readonly<Values> = {},
): Part {
  for (const part of draft.parts) if (part.table === table && part.moment === moment && part.number === number) return part;
  const made: Part = { table, moment, number, values: { ...template } };
  draft.parts.push(made);
  return made;
}

export function findPart(draft: Draft, table: TableName): Part | undefined {
  return draft.parts.find((part) => part.table === table);
}
