import type { TableName, Value } from "@/lib/codebook";
import { type CellRead, isDay, type ReadCell } from "../cells/cell-read";
import { saysNoEvent } from "../cells/read-code";
import type { SheetKind } from "../match/sheet-kind";
import { tableOfKind } from "../match/sheet-kind";
import { type Target, targetId } from "../match/target";
import type { Sheet } from "../types";
import type { ColumnPlan } from "./column-plan";
import { type Draft, newDraft, partOf } from "./draft";
import { partTemplates, type Templates, tableFilled } from "./part-templates";
import { type Rules, readerOf } from "./reader-of";
import { suspectOf } from "./suspect-of";

type Column = { readonly plan: ColumnPlan; readonly read: ReadCell; readonly fill: (draft: Draft, read: CellRead) => void };

/** A function that reads one row of a sheet into a draft, its columns compiled once. */
export function compileRows(
  sheet: Sheet,
  kind: SheetKind,
  plans: readonly ColumnPlan[],
  rules: Rules,
  known: () => ReadonlySet<string>,
): (index: number) => Draft {
  // the row's own bone and side must be known before the columns that depend on them
  const ordered = [...plans].sort((a, b) => rank(a.target) - rank(b.target));
  const templates = partTemplates(ordered, kind);
  const first = firstPart(kind);
  const columns = ordered.map(
    (plan): Column => ({
      plan,
      read: readerOf(plan, rules, suspectOf(sheet, plan.index, known)),
      fill: fillerOf(plan.target, kind, templates),
    }),
  );
  return (index) => {
    const cells = sheet.rows[index] as readonly string[];
    const draft = newDraft(sheet.file, sheet.rowNumbers[index] as number, index);
    if (first) partOf(draft, first, null, null, templates(first, null, null));
    for (const column of columns) fillCell(draft, column, cells[column.plan.index] as string);
    return draft;
  };
}

/** The part that a row has even where its cells are blank. */
function firstPart(kind: SheetKind): TableName | null {
  if (kind === "one-sheet") return "segment";
  return kind === "persons" ? null : tableOfKind[kind];
}

function rank({ table, field }: Target): number {
  if (field === "bone" || field === "side") return 0;
  return table === "file" ? 2 : 1;
}

function fillCell(draft: Draft, { plan, read, fill }: Column, cell: string): void {
  if (cell === "") return;
  const { table, field } = plan.target;
  if (table === "event" && field === "eventType" && saysNoEvent(cell)) {
    draft.noEvents = true;
    return;
  }
  const result = read(cell);
  if (result.facts.length > 0) {
    const place = { column: plan.header, field: targetId(plan.target) };
    for (const fact of result.facts) draft.facts.push({ ...fact, ...place });
  }
  fill(draft, result);
}

function fillerOf(target: Target, kind: SheetKind, templates: Templates): Column["fill"] {
  if (target.table === "file") return fileFiller(target);
  const { table, field, moment, number } = target;
  if (table === "person" && field === "unit") return unitFiller;
  const main = tableFilled(table, kind);
  const template = templates(main, moment, number);
  return (draft, { value, also }) => {
    const { values } = partOf(draft, main, moment, number, template);
    if (value !== null && value !== undefined) values[field] = value;
    if (also) for (const [other, held] of Object.entries(also)) values[other] ??= held;
  };
}

function fileFiller({ field, moment }: Target): Column["fill"] {
  if (field === "localId") return localIdFiller;
  if (field === "surgeonName") return surgeonFiller;
  if (field === "dateOfBirth") return birthFiller;
  if (field === "releases") return releasesFiller;
  const bone = field === "femurOfSideMm" ? "femur" : "tibia";
  return (draft, { value }) => {
    const side = partOf(draft, "segment").values.side;
    if (value === null || (side !== "left" && side !== "right")) return;
    partOf(draft, "bodyMeasure", moment).values[`${bone}${side === "left" ? "Left" : "Right"}Mm`] ??= value;
  };
}

const unitFiller: Column["fill"] = (draft, { value }) => {
  draft.unit = textOf(value) ?? draft.unit;
};

const localIdFiller: Column["fill"] = (draft, { value }) => {
  draft.localId = textOf(value) ?? "";
};

const surgeonFiller: Column["fill"] = (draft, { value }) => {
  draft.surgeon = textOf(value);
};

const birthFiller: Column["fill"] = (draft, { value }) => {
  draft.birth = isDay(value) && "on" in value ? value.on : null;
};

const releasesFiller: Column["fill"] = (draft, { also }) => {
  Object.assign(partOf(draft, "segment").values, also);
};

function textOf(value: Value | object | undefined): string | null {
  return typeof value === "string" ? value : null;
}
