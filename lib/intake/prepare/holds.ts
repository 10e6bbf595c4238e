import { detectInCell, type SuspicionKind } from "../detect";
import type { Sheet } from "../types";

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
  const looked = new Set<string>();
  for (const row of sheet.rows) {
    const cell = row[index] ?? "";
    if (cell === "" || looked.has(cell)) continue;
    if (looked.add(cell).size > cellsLookedAt) break;
    for (const { kind, level } of detectInCell(cell, { header })) if (level === "block") kinds.add(kind);
  }
  return [...kinds];
}
