import { type FileOnlyField, fieldsOf, fileOnlyFields, type TableName } from "@/lib/codebook";
import { type SheetKind, tableOfKind } from "./sheet-kind";
import { fileTarget, type Moment, type SpreadField, type Target, target } from "./target";

const spread: ReadonlySet<string> = new Set<SpreadField>(["releases", "femurOfSideMm", "tibiaOfSideMm"]);

/** The target that a FIELD of a mapping names in a kind of sheet; `null` when that sheet has none such. */
export function parseTarget(id: string, kind: SheetKind): Target | null {
  const [field, suffix = null, ...more] = id.split(".");
  if (!field || more.length > 0) return null;
  const moment = suffix === "before" || suffix === "final" ? suffix : null;
  const number = suffix !== null && /^[1-9]\d?$/.test(suffix) ? Number(suffix) : null;
  if (suffix !== null && moment === null && number === null) return null;
  return kind === "one-sheet" ? inOneSheet(field, moment, number) : inTable(field, suffix, kind);
}

function inOneSheet(field: string, moment: Moment | null, number: number | null): Target | null {
  if (number !== null) {
    const table = (["event", "visit", "score"] as const).find((name) => holds(name, field));
    return table ? target(table, field, null, number) : null;
  }
  if (moment === null && field in fileOnlyFields) return fileTarget(field as FileOnlyField);
  if (spread.has(field)) return fileTarget(field as SpreadField, field === "releases" ? null : (moment ?? "before"));
  const table = (["person", "segment"] as const).find((name) => holds(name, field));
  if (table) return moment === null ? target(table, field) : null;
  return holds("bodyMeasure", field) ? target("bodyMeasure", field, moment ?? "before") : null;
}

function inTable(field: string, suffix: string | null, kind: Exclude<SheetKind, "one-sheet">): Target | null {
  if (suffix !== null) return null;
  if (field === "localId") return fileTarget("localId");
  const table = tableOfKind[kind];
  if (holds(table, field)) return target(table, field);
  if (field === "unit") return target("person", "unit");
  return field === "episode" && (kind === "visits" || kind === "events") ? target("segment", "episode") : null;
}

function holds(table: TableName, field: string): boolean {
  return fieldsOf(table).some(([id, { madeByStrip }]) => id === field && !madeByStrip);
}
