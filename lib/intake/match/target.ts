import { type Field, type FileOnlyField, fieldOf, type TableName, tables } from "@/lib/codebook";

/** Fields of a file that fill others and are never stored: those of the codebook, and three columns that spread over several fields. */
export type SpreadField = "releases" | "femurOfSideMm" | "tibiaOfSideMm";
export type Moment = "before" | "final";

/** What a column fills. `moment`: which of a one-sheet row's two body measures; `number`: which of its visits, events or scores. */
export type Target =
  | { readonly table: "file"; readonly field: FileOnlyField | SpreadField; readonly moment: Moment | null; readonly number: null }
  | { readonly table: TableName; readonly field: string; readonly moment: Moment | null; readonly number: number | null };

export function target(table: TableName, field: string, moment: Moment | null = null, number: number | null = null): Target {
  return { table, field, moment, number };
}

export function fileTarget(field: FileOnlyField | SpreadField, moment: Moment | null = null): Target {
  return { table: "file", field, moment, number: null };
}

/** The FIELD of a mapping. @example targetId({ table: "event", field: "eventType", moment: null, number: 2 }) // => "eventType.2" */
export function targetId({ field, moment, number }: Target): string {
  const suffix = moment ?? number;
  return suffix === null ? field : `${field}.${suffix}`;
}

const bodyLength: Field = { kind: "number", unit: "mm", hard: [120, 700], label: "Bone of the row’s side", role: "quasi", known: "before" };

/** The codebook's field behind a target; `null` for local number, date of birth, surgeon and list of releases. */
export function fieldOfTarget({ table, field }: Target): Field | null {
  if (table === "file") return field === "femurOfSideMm" || field === "tibiaOfSideMm" ? bodyLength : null;
  return field in tables[table].fields ? fieldOf(table, field) : null;
}
