import { type Field, fieldsOf } from "@/lib/codebook";
import { followUpWindows } from "@/lib/outcomes";

/** What a column of the casebook holds. `days` are days from the segment's surgery; `text` is a surgeon's code or a code of the unit's list. */
export type CasebookKind = "code" | "flag" | "number" | "days" | "text";
export type CasebookColumn = {
  readonly id: string;
  readonly label: string;
  readonly unit: string | null;
  readonly kind: CasebookKind;
  /** Under which head a reader finds it among the columns to choose. */
  readonly group: "patient" | "before" | "operation" | "lengthening" | "later" | "worked-out";
  /** Where it is read: a field of the person or segment, or worked out from the segment's own record. */
  readonly from:
    | { readonly table: "person" | "segment"; readonly field: string }
    | { readonly workedOut: WorkedOut }
    | { readonly window: string };
};
export type WorkedOut =
  | "healingStatus"
  | "timeToConsolidation"
  | "surgeryToConsolidation"
  | "lastFilm"
  | "corticesAtLastFilm"
  | "visits"
  | "events";

const groups = { before: "before", operation: "operation", "distraction-end": "lengthening", later: "later" } as const;

/** The name under which answers tell a day: `consolidationDay` → `daysToConsolidation`. */
export function daysName(field: string): string {
  const name = field.replace(/Day$/, "");
  return `daysTo${name.charAt(0).toUpperCase()}${name.slice(1)}`;
}

function unitOf(field: Field): string | null {
  return field.kind === "number" ? field.unit : null;
}

function columnOfField(table: "person" | "segment", id: string, field: Field): readonly CasebookColumn[] {
  const group = table === "person" ? ("patient" as const) : groups[field.known];
  const column = { label: field.label, group, from: { table, field: id } };
  switch (field.kind) {
    case "code":
    case "flag":
      return [{ ...column, id, unit: null, kind: field.kind }];
    case "number":
    case "count":
      return [{ ...column, id, unit: unitOf(field), kind: "number" }];
    case "listed":
      return [{ ...column, id, unit: null, kind: "text" }];
    case "day":
      return id === "surgeryDay" ? [] : [{ ...column, id: daysName(id), unit: "days", kind: "days" }];
    case "keyed":
      // a pseudonym is never shown: a case goes by its number, a surgeon by S1, S2 …
      return id === "surgeon" ? [{ ...column, id, unit: null, kind: "text" }] : [];
  }
}

const workedOut = (id: string, label: string, kind: CasebookKind, unit: string | null, what: WorkedOut): CasebookColumn => ({
  id,
  label,
  unit,
  kind,
  group: "worked-out",
  from: { workedOut: what },
});

/** Every column of the casebook, in the order in which they are offered. The case itself stands first in every row and is none of them. */
export const casebookColumns: readonly CasebookColumn[] = [
  ...fieldsOf("segment").flatMap(([id, field]) => columnOfField("segment", id, field)),
  workedOut("healingStatus", "Healing status", "code", null, "healingStatus"),
  workedOut("time-to-consolidation", "Consolidated", "days", "days", "timeToConsolidation"),
  workedOut("surgery-to-consolidation", "Surgery to consolidation", "number", "days/cm", "surgeryToConsolidation"),
  workedOut("lastFilm", "Last film held", "days", "days", "lastFilm"),
  workedOut("corticesAtLastFilm", "Cortices at last film", "number", null, "corticesAtLastFilm"),
  workedOut("visits", "Visits held", "number", null, "visits"),
  workedOut("events", "Events held", "number", null, "events"),
  ...followUpWindows.map(
    ({ id, label }): CasebookColumn => ({
      id: `film-${id}`,
      label: `Film at ${label}`,
      unit: null,
      kind: "code",
      group: "worked-out",
      from: { window: id },
    }),
  ),
  ...fieldsOf("person").flatMap(([id, field]) => columnOfField("person", id, field)),
];

const byId = new Map(casebookColumns.map((column) => [column.id, column]));

export function casebookColumn(id: string): CasebookColumn | undefined {
  return byId.get(id);
}

/** The columns shown when none were chosen. */
export const usualColumns: readonly string[] = [
  "bone",
  "side",
  "surgeryYear",
  "device",
  "gainMm",
  "healingStatus",
  "time-to-consolidation",
  "lastFilm",
];
