/** What a field may disclose. Direct identifiers have no field at all: there is no column in which one could be kept. */
export type Role = "linking" | "quasi" | "sensitive" | "plain";

/** When the value is known, counted on the clock of the segment's surgery. A comparison refuses what is known later than its clock's start. */
export type Known = "before" | "operation" | "distraction-end" | "later";

export type Range = readonly [low: number, high: number];
export type Unit = "mm" | "kg" | "deg" | "years" | "mm/day" | "points";

type Common = {
  readonly label: string;
  readonly role: Role;
  readonly known: Known;
  /** Headers of a file that mean this field, beside its id, its label and its template header. */
  readonly aliases?: readonly string[];
  /** Headers that mean this field only when a unit of time stands in the header. */
  readonly aliasesWithTimeUnit?: readonly string[];
  /** A row without it is set aside. */
  readonly required?: true;
  /** Set by the strip step: no column of a file holds it. */
  readonly madeByStrip?: true;
  /** Never leaves the house, whatever the export. */
  readonly insideOnly?: true;
};

type Limits = {
  /** Outside: the row is set aside with the reason. */
  readonly hard?: Range;
  /** Outside: a finding of severity warn; the value is kept. */
  readonly usual?: Range;
};

export type CodeField = Common & {
  readonly kind: "code";
  readonly codes: readonly [string, ...string[]];
  /** Folded spellings of a value beside the code and its label. */
  readonly values?: Readonly<Record<string, string>>;
  /** Folded spellings that could be several codes: the person is asked. */
  readonly asks?: readonly string[];
};
/** A code of a list that the unit keeps itself (units, scores, norm sets). */
export type ListedField = Common & { readonly kind: "listed"; readonly pattern: string; readonly fallback?: string };
export type FlagField = Common & { readonly kind: "flag" };
/** 26 characters of Crockford's base 32, made by the strip step. */
export type KeyedField = Common & { readonly kind: "keyed" };
/** A whole number of days on the person's own line; only differences of one person's days mean anything. */
export type DayField = Common & { readonly kind: "day" };
export type CountField = Common & Limits & { readonly kind: "count"; readonly values?: Readonly<Record<string, number>> };
export type NumberField = Common & Limits & { readonly kind: "number"; readonly unit: Unit };

export type Field = CodeField | ListedField | FlagField | KeyedField | DayField | CountField | NumberField;

export type TableName = "person" | "bodyMeasure" | "segment" | "visit" | "event" | "score";

export type Table = {
  readonly name: TableName;
  readonly label: string;
  /** The natural key, parents first. Fields of a parent's key are declared in the table too. */
  readonly key: readonly string[];
  readonly fields: Readonly<Record<string, Field>>;
};

type ValueOf<F> = F extends { kind: "code"; codes: readonly (infer C)[] }
  ? C
  : F extends { kind: "flag" }
    ? boolean
    : F extends { kind: "keyed" | "listed" }
      ? string
      : number;

/** The row of a table: required fields hold a value, every other is `null` where nothing was recorded. */
export type RowOf<T extends Table> = {
  -readonly [K in keyof T["fields"]]: T["fields"][K] extends { required: true } ? ValueOf<T["fields"][K]> : ValueOf<T["fields"][K]> | null;
};

/** A value of any field, as stored and sent. */
export type Value = string | number | boolean | null;
