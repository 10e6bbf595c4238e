import { detectInFileName, detectInHeader } from "../detect";
import { finding } from "../findings/finding";
import type { SheetMatch } from "../match/column-match";
import { targetId } from "../match/target";
import type { Finding, Sheet } from "../types";
import type { ColumnPlan } from "./column-plan";
import { suspectOf } from "./suspect-of";

type Known = () => ReadonlySet<string>;

/** A match whose meaningless headers that hold a name or number known from the files count as identifiers. */
export function withKnownHeaders(sheet: Sheet, match: SheetMatch, known: Known): SheetMatch {
  const isKnown = (index: number) =>
    detectInHeader(sheet.headerCells[index] ?? "", { known: known() }).some(({ level }) => level === "block");
  const columns = match.columns.map((column) =>
    column.dropped === "matches-nothing" && isKnown(column.index) ? ({ ...column, dropped: "identifier-in-header" } as const) : column,
  );
  return { ...match, columns };
}

/** What a file's name and whole columns of numbers look like. */
export function suspicions(sheet: Sheet, plans: readonly ColumnPlan[], known: Known): readonly Finding[] {
  const { file } = sheet;
  const inName = detectInFileName(file, { known: known() });
  const named = inName.length === 0 ? [] : [finding("identifier-suspected", { file }, "the file’s name", { kind: words(inName) })];
  const numbers = plans.filter(({ index, reading }) => reading.as === "number" && suspectOf(sheet, index, known).recordNumbers());
  return [
    ...named,
    ...numbers.map(({ header, target }) =>
      finding("identifier-suspected", { file, column: header, field: targetId(target) }, "a column in which nearly every number differs", {
        kind: "record number",
        kept: "numbers",
      }),
    ),
  ];
}

/** Kinds of identifier in words of ours. */
export function words(found: readonly { readonly kind: string }[]): string {
  return found.map(({ kind }) => kind.replaceAll("-", " ")).join(", ");
}
