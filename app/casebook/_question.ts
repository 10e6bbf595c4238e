import { type CasebookQuestion, casebookColumn, casebookColumns, casebookList, casebookLists } from "@/lib/answers";
import { canBeFound } from "@/lib/codebook";
import { CohortError, canonicalWhere, parseWhere, type Where } from "@/lib/cohorts";
import type { Asked } from "../_page/asked";

export const rowsShown = 100;
const longestSearch = 200;

/** What the address asks of the casebook; what it leaves out is `null`, or has its usual value. */
export type BookAsked = {
  readonly where: Where;
  readonly search: string;
  readonly list: string | null;
  readonly columns: readonly string[] | null;
  readonly sort: string;
  readonly descending: boolean;
  readonly from: number;
  readonly asOf: number | null;
};
/** A piece of the address that can't be answered, and what it may be. The piece itself is not repeated: it may hold anything. */
export type Trouble = { readonly parameter: string; readonly expected: string };

const known = ["where", "search", "list", "columns", "sort", "order", "from", "asOf"];

/** Reads the address. */
export function readBookAsked(
  asked: Asked,
  { newestBatch, highestCase }: { readonly newestBatch: number; readonly highestCase: number },
): { readonly asked: BookAsked } | { readonly troubles: readonly Trouble[] } {
  const troubles: Trouble[] = [];
  const refuse = (parameter: string, expected: string) => void troubles.push({ parameter, expected });
  for (const name of Object.keys(asked)) if (!known.includes(name)) refuse("a piece with an unknown name", `one of ${known.join(", ")}`);
  const text = (name: string) => {
    const value = asked[name];
    if (Array.isArray(value)) refuse(name, "given once");
    return typeof value === "string" && value !== "" ? value : null;
  };
  const read: BookAsked = {
    where: readWhere(text("where"), refuse),
    search: readSearch(text("search"), highestCase, refuse),
    list: readList(text("list"), refuse),
    columns: readColumns(asked.columns, refuse),
    sort: readSort(text("sort"), refuse),
    descending: readOrder(text("order"), refuse),
    from: readNumber("from", text("from"), { least: 1, most: 9_999_999 }, refuse) ?? 1,
    asOf: readNumber("asOf", text("asOf"), { least: 1, most: newestBatch }, refuse),
  };
  return troubles.length > 0 ? { troubles } : { asked: read };
}

type Refuse = (parameter: string, expected: string) => void;

function readWhere(text: string | null, refuse: Refuse): Where {
  try {
    return text === null ? {} : parseWhere(text);
  } catch (error) {
    if (!(error instanceof CohortError)) throw error;
    refuse("where", `a cohort: ${error.message}`);
    return {};
  }
}

/** A name or a local number finds nothing, and is refused before anything is asked with it. */
function readSearch(text: string | null, highestCase: number, refuse: Refuse): string {
  if (text !== null && text.length > longestSearch) refuse("search", `at most ${longestSearch} characters`);
  if (text !== null && !canBeFound(text, highestCase))
    refuse("search", "numbers of cases, years, surgeons’ codes or words that are recorded");
  return text ?? "";
}

function readList(text: string | null, refuse: Refuse): string | null {
  if (text !== null && !casebookList(text)) refuse("list", `one of ${casebookLists.map(({ id }) => id).join(", ")}`);
  return text;
}

/** Columns come as one list with commas, or, from a form, one by one; either way in the order given. */
function readColumns(value: string | string[] | undefined, refuse: Refuse): readonly string[] | null {
  const ids = [value ?? []]
    .flat()
    .flatMap((text) => text.split(","))
    .filter((id) => id !== "");
  if (ids.some((id) => casebookColumn(id) === undefined)) refuse("columns", "columns of the casebook");
  return ids.length === 0 ? null : [...new Set(ids)].slice(0, casebookColumns.length);
}

function readSort(text: string | null, refuse: Refuse): string {
  if (text !== null && text !== "case" && casebookColumn(text) === undefined) refuse("sort", "case, or a column of the casebook");
  return text ?? "case";
}

function readOrder(text: string | null, refuse: Refuse): boolean {
  if (text !== null && text !== "falling" && text !== "rising") refuse("order", "rising or falling");
  return text === "falling";
}

function readNumber(name: string, text: string | null, { least, most }: { least: number; most: number }, refuse: Refuse): number | null {
  if (text === null) return null;
  const number = /^\d{1,9}$/.test(text) ? Number(text) : Number.NaN;
  if (number >= least && number <= most) return number;
  refuse(name, `a whole number from ${least} to ${most}`);
  return null;
}

/** The question that answers take. */
export function questionOf({ where, search, list, columns, sort, descending, from, asOf }: BookAsked): CasebookQuestion {
  return {
    where,
    search,
    sort,
    descending,
    from: from - 1,
    limit: rowsShown,
    ...(list === null ? {} : { list }),
    ...(columns === null ? {} : { columns }),
    ...(asOf === null ? {} : { asOf }),
  };
}

/** The pieces of an address that asks this, but for those at their usual value: canonical, so that equal questions have one address. */
export function piecesOf({
  where,
  search,
  list,
  columns,
  sort,
  descending,
  from,
  asOf,
}: BookAsked): readonly (readonly [string, string])[] {
  const pieces: readonly (readonly [string, string | null])[] = [
    ["list", list],
    ["search", search === "" ? null : search],
    ["where", Object.keys(where).length === 0 ? null : canonicalWhere(where)],
    ["columns", columns === null ? null : columns.join(",")],
    ["sort", sort === "case" ? null : sort],
    ["order", descending ? "falling" : null],
    ["from", from === 1 ? null : String(from)],
    ["asOf", asOf === null ? null : String(asOf)],
  ];
  return pieces.filter((piece): piece is [string, string] => piece[1] !== null);
}

/** The address of the casebook that asks this. */
export function addressOf(asked: BookAsked): string {
  const pieces = new URLSearchParams(piecesOf(asked).map(([name, value]) => [name, value]));
  return pieces.size === 0 ? "/casebook" : `/casebook?${pieces}`;
}
