import { detectInCell } from "../detect";

/** The kinds of identifier that a cell surely holds, in words of ours; `null` when none is. */
export function identifierIn(cell: string): string | null {
  const sure = detectInCell(cell).filter(({ level }) => level === "block");
  return sure.length === 0 ? null : sure.map(({ kind }) => kind.replaceAll("-", " ")).join(", ");
}
