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

/**
 * Reads rows of a frame as objects of these fields, and of others left `null` for the caller. The frame's columns are typed by the
 * codebook's kinds, field by field: the row that they give is the codebook's.
 */
export function rowReader<Row>(frame: Frame, fields: readonly string[], others: readonly string[] = []): (row: number) => Row {
  const columns = fields.map((field) => columnOf(frame, field));
  // made by the parser and copied, a row is quick to make and to read, which one made entry by entry is not
  const blank: Readonly<Record<string, Value>> = JSON.parse(
    JSON.stringify(Object.fromEntries([...fields, ...others].map((id) => [id, null]))),
  );
  return (row) => {
    const values = { ...blank };
    for (let i = 0; i < fields.length; i++) values[fields[i] as string] = valueAt(columns[i] as FrameColumn, row);
    return values as Row;
  };
}

/** Row of each entity. */
export function rowsByEntity(entities: Int32Array): ReadonlyMap<number, number> {
  const rows = new Map<number, number>();
  for (let row = 0; row < entities.length; row++) rows.set(entities[row] as number, row);
  return rows;
}
