import type { TableName } from "@/lib/codebook";
import type { FrameRows, MergedCells } from "../read/frame";
import type { JoinView } from "./join-view";
import type { MergedRow } from "./merged-rows";

/** A frame's rows with those of patients of several numbers merged, and the cells of the merged by their entity. */
export type ViewedRows = { readonly rows: FrameRows; readonly merged: MergedCells };
type Placed = { readonly entity: number; readonly person: number; readonly segment: number };

/** Merged rows of a table that stand: their patient holds, and the segment that they name. */
function standing(view: JoinView, table: TableName): readonly (MergedRow & { readonly person: number })[] {
  return view.groups.flatMap((group) => {
    if (view.rowsOf("person", group).length === 0) return [];
    const segments = new Set(view.rowsOf("segment", group).map(({ entity }) => entity));
    const rows = view.rowsOf(table, group).filter(({ segment }) => segment === null || segments.has(segment));
    const person = group.root.entity;
    return rows.map((row) => ({ ...row, entity: table === "person" ? person : row.entity, person }));
  });
}

/** Rows of persons joined into others give way to merged ones; the order stays that of the entities. */
export function frameInView(view: JoinView, table: TableName, rows: FrameRows): ViewedRows {
  const placed: Placed[] = [];
  for (let row = 0; row < rows.length; row++) {
    const person = rows.personEntity[row] as number;
    if (!view.groupOf(person)) placed.push({ entity: rows.entity[row] as number, person, segment: rows.segmentEntity?.[row] ?? -1 });
  }
  const merged = standing(view, table);
  for (const { entity, person, segment } of merged) placed.push({ entity, person, segment: segment ?? -1 });
  placed.sort((a, b) => a.entity - b.entity);
  return {
    merged: new Map(merged.map(({ entity, cells }) => [entity, cells])),
    rows: {
      table,
      length: placed.length,
      entity: Int32Array.from(placed, ({ entity }) => entity),
      personEntity: Int32Array.from(placed, ({ person }) => person),
      segmentEntity: rows.segmentEntity && Int32Array.from(placed, ({ segment }) => segment),
    },
  };
}
