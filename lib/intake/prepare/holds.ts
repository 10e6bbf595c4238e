import { detectInCell, type SuspicionKind } from "../detect";
import type { Sheet } from "../types";
import { tallyOf } from "./column-cells";

const cellsLookedAt = 200;
const held = new WeakMap<Sheet, Map<number, readonly SuspicionKind[]>>();

/** Kinds of identifier that a dropped column's first different cells hold for certain: the person asks where the names are. */
export function kindsHeld(sheet: Sheet, index: number): readonly SuspicionKind[] {
  const known = held.get(sheet) ?? new Map<number, readonly SuspicionKind[]>();
  held.set(sheet, known);
  const found = known.get(index) ?? lookAt(sheet, index);
  known.set(index, found);
  return found;
}

function lookAt(sheet: Sheet, index: number): readonly SuspicionKind[] {
  const kinds = new Set<SuspicionKind>();
  const header = sheet.headerCells[index] ?? "";
  let looked = 0;
  for (const cell of tallyOf(sheet, index).keys()) {
    if (++looked > cellsLookedAt) break;
    for (const { kind, level } of detectInCell(cell, { header })) if (level === "block") kinds.add(kind);
  }
  return [...kinds];
}
