import type { Value } from "@/lib/codebook";
import { type CellRead, isDay, type ReadCell } from "../cells/cell-read";
import { saysNoEvent } from "../cells/read-code";
import type { SheetKind } from "../match/sheet-kind";
import { tableOfKind } from "../match/sheet-kind";
import { type Target, targetId } from "../match/target";
import type { Sheet } from "../types";
import type { ColumnPlan } from "./column-plan";
import { type Draft, newDraft, partOf } from "./draft";
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
  const columns = ordered.map(
    (plan): Column => ({ plan, read: readerOf(plan, rules, suspectOf(sheet, plan.index, known)), fill: fillerOf(plan.target, kind) }),
  );
  return (index) => {
    const cells = sheet.rows[index] as readonly string[];
    const draft = newDraft(sheet.file, sheet.rowNumbers[index] as number, index);
    if (kind === "one-sheet") partOf(draft, "segment");
    else if (kind !== "persons") partOf(draft, tableOfKind[kind]);
    for (const column of columns) fillCell(draft, column, cells[column.plan.index] as string);
    return draft;
  };
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

function fillerOf(target: Target, kind: SheetKind): Column["fill"] {
  if (target.table === "file") return fileFiller(target);
  const { table, field, moment, number } = target;
  if (table === "person" && field === "unit") return unitFiller;
  // the episode of a visit or event sheet only names the segment
  const main = kind === "one-sheet" || table !== "segment" || kind === "persons" ? table : tableOfKind[kind];
  return (draft, { value, also }) => {
    const { values } = partOf(draft, main, moment, number);
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
