import type { Frame } from "@/lib/registry";

/**
 * Surgeons as S1, S2 … in the order in which the registry first heard of them, which no later batch changes. Gives the code of each row of
 * the frame of segments, `null` where no surgeon was recorded.
 */
export function surgeonCodes(frame: Frame): (row: number) => string | null {
  const column = frame.columns.surgeon;
  if (column?.kind !== "label") throw new RangeError("surgeonCodes requires the frame's column surgeon, received a frame without it");
  const codes = new Map<number, string>();
  // rows of a frame stand in the order of their entities, which is the order in which they came
  for (const label of column.values) if (label >= 0 && !codes.has(label)) codes.set(label, `S${codes.size + 1}`);
  return (row) => codes.get(column.values[row] ?? -1) ?? null;
}
