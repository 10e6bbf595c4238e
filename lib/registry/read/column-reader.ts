import type { CodeField, Field } from "@/lib/codebook";
import type { FrameColumn } from "../types";

type Cell = string | number | null;
/** Takes the cells of a column one by one, in the order of the rows, and gives the column. */
export type ColumnReader = { readonly take: (cell: Cell, row: number) => void; readonly column: () => FrameColumn };

function codeReader({ codes }: CodeField, length: number): ColumnReader {
  const places = new Map(codes.map((code, i) => [code, i]));
  const values = new Int16Array(length);
  return {
    take: (cell, row) => {
      values[row] = places.get(String(cell)) ?? -1;
    },
    column: () => ({ kind: "code", codes, values }),
  };
}

function flagReader(length: number): ColumnReader {
  const values = new Int8Array(length);
  return {
    take: (cell, row) => {
      values[row] = cell === null ? -1 : Number(cell);
    },
    column: () => ({ kind: "flag", values }),
  };
}

function numberReader(length: number): ColumnReader {
  const values = new Float64Array(length);
  return {
    take: (cell, row) => {
      values[row] = cell === null ? Number.NaN : Number(cell);
    },
    column: () => ({ kind: "number", values }),
  };
}

/** Labels stand in alphabetical order, so that a column doesn't depend on which row came in first. */
function labelReader(length: number): ColumnReader {
  const places = new Map<string, number>();
  const values = new Int32Array(length);
  return {
    take: (cell, row) => {
      if (typeof cell === "string" && !places.has(cell)) places.set(cell, places.size);
      values[row] = cell === null ? -1 : (places.get(String(cell)) ?? -1);
    },
    column: () => {
      const labels = [...places.keys()].sort();
      const sorted = new Map(labels.map((label, i) => [places.get(label), i]));
      return { kind: "label", labels, values: values.map((place) => sorted.get(place) ?? -1) };
    },
  };
}

/** A reader for a field's column of so many rows. */
export function columnReader(field: Field, length: number): ColumnReader {
  switch (field.kind) {
    case "code":
      return codeReader(field, length);
    case "flag":
      return flagReader(length);
    case "keyed":
    case "listed":
      return labelReader(length);
    case "day":
    case "count":
    case "number":
      return numberReader(length);
  }
}
