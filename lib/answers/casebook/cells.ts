import { healingStatuses, type Value } from "@/lib/codebook";
import type { Registry } from "@/lib/registry";
import { columnOf, valueAt } from "../frames/read";
import type { Book } from "./book";
import type { CasebookColumn } from "./columns";
import { surgeonCodes } from "./surgeons";
import { windowStatuses } from "./worked-out";

/** Reads a column of the book: the value of each row. */
export type Cells = (row: number) => Value;

const numberOf = (values: Float64Array): Cells => {
  return (row) => {
    const value = values[row] ?? Number.NaN;
    return Number.isNaN(value) ? null : value;
  };
};
const codeOf = (values: Int8Array, codes: readonly string[]): Cells => {
  return (row) => codes[values[row] ?? -1] ?? null;
};

/** A column of the book, read from its frame or worked out. */
export async function cellsOf(registry: Registry, book: Book, { from, kind }: CasebookColumn): Promise<Cells> {
  if ("window" in from) return codeOf(book.worked.windows[from.window] ?? new Int8Array(), windowStatuses);
  if ("workedOut" in from) {
    if (from.workedOut === "healingStatus") return codeOf(book.worked.healingStatus, healingStatuses);
    return numberOf(from.workedOut === "events" ? book.eventsHeld : book.worked[from.workedOut]);
  }
  if (from.table === "segment") return segmentCells(registry, book, from.field, kind === "days");
  return personCells(registry, book, from.field, kind === "days");
}

async function segmentCells(registry: Registry, book: Book, field: string, asDays: boolean): Promise<Cells> {
  const frame = await registry.frameAsOf(book.state, "segment", [field, "surgeryDay"]);
  if (field === "surgeon") return surgeonCodes(frame);
  const [column, surgery] = [columnOf(frame, field), columnOf(frame, "surgeryDay")];
  const read: Cells = (row) => valueAt(column, row);
  return asDays ? (row) => difference(read(row), valueAt(surgery, row)) : read;
}

async function personCells(registry: Registry, book: Book, field: string, asDays: boolean): Promise<Cells> {
  const frame = await registry.frameAsOf(book.state, "person", [field]);
  const column = columnOf(frame, field);
  const read: Cells = (row) => {
    const person = book.personRow[row] ?? -1;
    return person < 0 ? null : valueAt(column, person);
  };
  if (!asDays) return read;
  const surgery = columnOf(await registry.frameAsOf(book.state, "segment", ["surgeryDay"]), "surgeryDay");
  return (row) => difference(read(row), valueAt(surgery, row));
}

function difference(day: Value, surgery: Value): number | null {
  return typeof day === "number" && typeof surgery === "number" ? day - surgery : null;
}
