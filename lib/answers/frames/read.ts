import type { Value } from "@/lib/codebook";
import type { Frame, FrameColumn } from "@/lib/registry";

/** The value of a field in a row of a frame; `null`: not recorded. Keyed and listed fields come as their text. */
export function valueAt(column: FrameColumn, row: number): Value {
  switch (column.kind) {
    case "code": {
      const code = column.values[row] ?? -1;
      return code < 0 ? null : (column.codes[code] ?? null);
    }
    case "label": {
      const label = column.values[row] ?? -1;
      return label < 0 ? null : (column.labels[label] ?? null);
    }
    case "flag": {
      const flag = column.values[row] ?? -1;
      return flag < 0 ? null : flag === 1;
    }
    case "number": {
      const value = column.values[row] ?? Number.NaN;
      return Number.isNaN(value) ? null : value;
    }
  }
}

/** @throws RangeError when the frame was read without the column */
export function columnOf(frame: Frame, field: string): FrameColumn {
  const column = frame.columns[field];
  if (!column) throw new RangeError(`columnOf requires a column of the frame of ${frame.table}, received ${field}`);
  return column;
}

/** Row of each entity. */
export function rowsByEntity(entities: Int32Array): ReadonlyMap<number, number> {
  const rows = new Map<number, number>();
  for (let row = 0; row < entities.length; row++) rows.set(entities[row] as number, row);
  return rows;
}
