import { fileOnlyFields, fold } from "@/lib/codebook";
import { detectInHeader } from "../detect";
import type { Mapping, Sheet } from "../types";
import { aliasIndex } from "./aliases";
import type { ColumnMatch, SheetMatch } from "./column-match";
import { lookUp } from "./lookup";
import { parseTarget } from "./parse-target";
import { type HeaderRead, readHeader } from "./read-header";
import { needed, type SheetKind, sheetKinds } from "./sheet-kind";
import { type Target, targetId } from "./target";

type MappedColumns = Pick<Mapping, "columns" | "units">;

/**
 * Every column of a sheet with the field it fills or the reason why it is dropped. A mapping's word comes before the header's own; a header
 * that names a direct identifier is dropped whatever a mapping says, save a national number taken as local number.
 * A header is matched as a whole, never by a part of it.
 */
export function matchSheet(sheet: Sheet, mapping: MappedColumns = { columns: {}, units: {} }): SheetMatch {
  const headers = sheet.headers.map((header, index) => ({ index, header, read: readHeader(sheet.headerCells[index] as string) }));
  const matches = sheetKinds.map((kind) => ({ kind, columns: headers.map((each) => matchColumn(each, kind, mapping)) }));
  const { kind, columns } = bestKind(matches);
  const named = columns.map((column) => suspectHeader(column, sheet));
  return { kind, columns: shareFields(preferLocalNumbers(dropEmptyDoubles(named, sheet), sheet)) };
}

type Header = { readonly index: number; readonly header: string; readonly read: HeaderRead };

function matchColumn({ index, header, read }: Header, kind: SheetKind, mapping: MappedColumns): ColumnMatch {
  const none = { index, header, target: null, how: null, unit: null, dropped: null, sharedWith: [] } as const;
  const reason = read.dropped;
  const said = Object.hasOwn(mapping.columns, header) ? mapping.columns[header] : undefined;
  if (said === null) return { ...none, dropped: reason === "comments" ? "comments" : "by-your-word" };
  const wanted = said === undefined ? null : parseTarget(said, kind);
  if (reason !== null && !mayHold(reason, wanted)) return { ...none, dropped: reason };
  const found = lookUp(read, aliasIndex(kind));
  const unit = Object.hasOwn(mapping.units, header) ? (mapping.units[header] ?? null) : (found?.unit ?? (wanted ? read.unit : null));
  if (wanted) return { ...none, target: wanted, how: "mapping", unit };
  return found ? { ...none, target: found.target, how: "alias", unit } : { ...none, dropped: "matches-nothing" };
}

/** A header that means nothing here may be a person's name or number. */
function suspectHeader(column: ColumnMatch, { headerCells }: Sheet): ColumnMatch {
  if (column.dropped !== "matches-nothing") return column;
  const isOne = detectInHeader(headerCells[column.index] as string).some(({ level }) => level === "block");
  return isOne ? { ...column, dropped: "identifier-in-header" } : column;
}

function mayHold(reason: string, wanted: Target | null): boolean {
  if (wanted === null) return false;
  if (reason === "national-number") return wanted.field === "localId";
  return reason === "blank-header";
}

/**
 * The kind of sheet that explains most columns. Without a bone, side, or time of surgery a row can't be a segment; where it can, a column
 * that only a segment has counts twice: a log of operations with two columns of one complication is still a log of operations.
 */
function bestKind(matches: readonly SheetMatch[]): SheetMatch {
  const possible = matches.filter(({ kind, columns }) => needed[kind].every((id) => columns.some(({ target }) => target?.field === id)));
  const segments = possible.find(({ kind }) => kind === "one-sheet");
  const isSegments = segments?.columns.some(({ target }) => target?.table === "segment") ?? false;
  const [first, ...others] = possible.filter(({ kind }) => isSegments || kind !== "one-sheet");
  if (!first) throw new RangeError("matchSheet requires a kind of sheet, received none");
  return others.reduce((best, match) => (explains(match, best) > explains(best, match) ? match : best), first);
}

/** Columns that a kind of sheet explains and another doesn't. */
function explains(match: SheetMatch, other: SheetMatch): number {
  const own = match.columns.filter(({ target }, i) => target !== null && other.columns[i]?.target === null);
  return own.length * (match.kind === "one-sheet" ? 2 : 1);
}

/** Of two columns for one field, one that is blank in every row says nothing. */
function dropEmptyDoubles(columns: readonly ColumnMatch[], sheet: Sheet): readonly ColumnMatch[] {
  const isEmpty = (index: number) => sheet.rows.every((row) => (row[index] ?? "").trim() === "");
  return columns.map((column) => {
    const double = column.target !== null && columns.some((other) => other !== column && sameTarget(other, column));
    return double && isEmpty(column.index) ? { ...column, target: null, how: null, dropped: "empty-column" } : column;
  });
}

/** An exact hospital number wins over a study number where both are there (ids.md §2). */
function preferLocalNumbers(columns: readonly ColumnMatch[], sheet: Sheet): readonly ColumnMatch[] {
  const second: ReadonlySet<string> = new Set(fileOnlyFields.localId.secondChoice.map(fold));
  const locals = columns.filter(({ target }) => target?.field === "localId");
  const isSecond = ({ index, how }: ColumnMatch) => how === "alias" && second.has(fold(sheet.headerCells[index] as string));
  const said = locals.filter(({ how }) => how === "mapping");
  const winners = said.length > 0 ? said : locals.filter((column) => !isSecond(column));
  if (winners.length === 0) return columns;
  return columns.map((column) =>
    locals.includes(column) && !winners.includes(column) ? { ...column, target: null, how: null, dropped: "another-local-number" } : column,
  );
}

function shareFields(columns: readonly ColumnMatch[]): readonly ColumnMatch[] {
  return columns.map((column) => ({
    ...column,
    sharedWith: columns.filter((other) => other !== column && sameTarget(other, column)).map(({ header }) => header),
  }));
}

function sameTarget(a: ColumnMatch, b: ColumnMatch): boolean {
  return a.target !== null && b.target !== null && targetId(a.target) === targetId(b.target);
}
