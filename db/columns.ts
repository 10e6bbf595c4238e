import type { NotNull } from "drizzle-orm";
import {
  integer,
  real,
  type SQLiteBooleanBuilderInitial,
  type SQLiteIntegerBuilderInitial,
  type SQLiteRealBuilderInitial,
  type SQLiteTextBuilderInitial,
  text,
} from "drizzle-orm/sqlite-core";
import { type Field, snake, type Table } from "@/lib/codebook";

type Codes<F> = F extends { kind: "code"; codes: readonly [infer First extends string, ...infer Rest extends string[]] }
  ? [First, ...Rest]
  : [string, ...string[]];

type BuilderOf<F extends Field> = F extends { kind: "flag" }
  ? SQLiteBooleanBuilderInitial<string>
  : F extends { kind: "day" | "count" }
    ? SQLiteIntegerBuilderInitial<string>
    : F extends { kind: "number" }
      ? SQLiteRealBuilderInitial<string>
      : SQLiteTextBuilderInitial<string, Codes<F>, undefined>;

type ColumnOf<F extends Field> = F extends { required: true } ? NotNull<BuilderOf<F>> : BuilderOf<F>;

/** The drizzle columns of a table of the codebook, by field id. */
export type ColumnsOf<T extends Table> = { -readonly [K in keyof T["fields"]]: ColumnOf<T["fields"][K]> };

function builderOf(column: string, field: Field) {
  switch (field.kind) {
    case "code":
      return text(column, { enum: [...field.codes] as [string, ...string[]] });
    case "listed":
    case "keyed":
      return text(column);
    case "flag":
      return integer(column, { mode: "boolean" });
    case "day":
    case "count":
      return integer(column);
    case "number":
      return real(column);
  }
}

/**
 * The columns of a table of the codebook, fresh builders at each call. What drizzle infers from them is the codebook's own row.
 * @example Object.keys(columnsOf(tables.score)) // => ["person", "scoreCode", "scoreDay", "scoreValue"]
 */
export function columnsOf<T extends Table>(table: T): ColumnsOf<T> {
  const columns = Object.entries(table.fields).map(([id, field]) => {
    const builder = builderOf(snake(id), field);
    return [id, field.required ? builder.notNull() : builder];
  });
  // the one cast: a loop over fields can't carry each field's own type, and the tests of types hold it to its word
  return Object.fromEntries(columns) as ColumnsOf<T>;
}

/** Some of the columns of a table. */
export function pick<C extends object, K extends keyof C>(columns: C, ids: readonly K[]): Pick<C, K> {
  return Object.fromEntries(ids.map((id) => [id, columns[id]])) as Pick<C, K>;
}

/** The columns of a table without some. */
export function omit<C extends object, K extends keyof C>(columns: C, ids: readonly K[]): Omit<C, K> {
  const left: readonly PropertyKey[] = ids;
  return Object.fromEntries(Object.entries(columns).filter(([id]) => !left.includes(id))) as Omit<C, K>;
}
