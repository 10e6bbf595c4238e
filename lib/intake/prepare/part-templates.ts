import type { TableName } from "@/lib/codebook";
import { type SheetKind, tableOfKind } from "../match/sheet-kind";
import type { Moment, Target } from "../match/target";
import type { ColumnPlan } from "./column-plan";
import type { Values } from "./draft";

/** Values with nothing read yet, for the part of a table, moment and number that the columns of a sheet fill. */
export type Templates = (table: TableName, moment: Moment | null, number: number | null) => Readonly<Values>;

const none: Readonly<Values> = {};

/** Templates of a sheet's parts: an object that has its fields from the start needn't grow one by one, a hundred thousand times over. */
export function partTemplates(plans: readonly ColumnPlan[], kind: SheetKind): Templates {
  const fields = new Map<string, Set<string>>();
  for (const { target } of plans) {
    if (target.table === "file") continue;
    const key = keyOf(tableFilled(target.table, kind), target.moment, target.number);
    fields.set(key, (fields.get(key) ?? new Set<string>()).add(target.field));
  }
  const templates = new Map([...fields].map(([key, names]) => [key, templateOf(names)]));
  return (table, moment, number) => templates.get(keyOf(table, moment, number)) ?? none;
}

/** The table that a column fills: the episode of a visit or event sheet only names the segment. */
export function tableFilled(table: TableName, kind: SheetKind): TableName {
  return kind === "one-sheet" || table !== "segment" || kind === "persons" ? table : tableOfKind[kind];
}

function templateOf(names: ReadonlySet<string>): Readonly<Values> {
  // objects of the parser are laid out at once
  const values = JSON.parse(JSON.stringify(Object.fromEntries([...names].map((name) => [name, null])))) as Values;
  for (const name of names) values[name] = undefined;
  return values;
}

function keyOf(table: Target["table"], moment: Moment | null, number: number | null): string {
  return `${table} ${moment} ${number}`;
}
