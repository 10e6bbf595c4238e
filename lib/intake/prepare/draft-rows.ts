import type { TableName, Value } from "@/lib/codebook";
import { type CellRead, isDay, type ReadCell } from "../cells/cell-read";
import { saysNoEvent } from "../cells/read-code";
import type { SheetKind } from "../match/sheet-kind";
import { tableOfKind } from "../match/sheet-kind";
import { type Target, targetId } from "../match/target";
import type { Sheet } from "../types";
import { type CodedColumn, codedColumn } from "./coded-columns";
import type { ColumnPlan } from "./column-plan";
import { type Draft, newDraft, partOf } from "./draft";
import { partTemplates, type Templates, tableFilled } from "./part-templates";
import { type Rules, readerOf } from "./reader-of";
import { suspectOf } from "./suspect-of";

type Fill = (draft: Draft, read: CellRead) => void;
type Column = {
  readonly plan: ColumnPlan;
  readonly cells: CodedColumn;
  readonly read: ReadCell;
  /** By spelling: the cell as read. */
  readonly reads: CellRead[];
  readonly fill: Fill;
  /** A spelling of it may say that there was no event. */
  readonly namesEvent: boolean;
};

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
      cells: codedColumn(sheet, plan.index),
      reads: [],
      namesEvent: plan.target.table === "event" && plan.target.field === "eventType",
      read: readerOf(plan, rules, suspectOf(sheet, plan.index, known)),
      fill: fillerOf(plan.target, kind, templates),
    }),
  );
  return (index) => {
    const draft = newDraft(sheet.file, sheet.rowNumbers[index] as number, index);
    if (first) partOf(draft, first, null, null, templates(first, null, null));
    for (const column of columns) {
      const code = column.cells.codes[index] as number;
      if (code > 0) fillCell(draft, column, code);
    }
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

function fillCell(draft: Draft, column: Column, code: number): void {
  const { plan, cells, reads, fill } = column;
  const cell = cells.spellings[code] as string;
  if (column.namesEvent && saysNoEvent(cell)) {
    draft.noEvents = true;
    return;
  }
  let result = reads[code];
  if (!result) {
    result = column.read(cell);
    reads[code] = result;
  }
  if (result.facts.length > 0) {
    const place = { column: plan.header, field: targetId(plan.target) };
    for (const fact of result.facts) draft.facts.push({ ...fact, ...place });
  }
  fill(draft, result);
}

function fillerOf(target: Target, kind: SheetKind, templates: Templates): Fill {
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

function fileFiller({ field, moment }: Target): Fill {
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

const unitFiller: Fill = (draft, { value }) => {
  draft.unit = textOf(value) ?? draft.unit;
};

const localIdFiller: Fill = (draft, { value }) => {
  draft.localId = textOf(value) ?? "";
};

const surgeonFiller: Fill = (draft, { value }) => {
  draft.surgeon = textOf(value);
};

const birthFiller: Fill = (draft, { value }) => {
  draft.birth = isDay(value) && "on" in value ? value.on : null;
};

const releasesFiller: Fill = (draft, { also }) => {
  Object.assign(partOf(draft, "segment").values, also);
};

function textOf(value: Value | object | undefined): string | null {
  return typeof value === "string" ? value : null;
}
