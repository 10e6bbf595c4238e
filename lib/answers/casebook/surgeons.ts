import type { Frame } from "@/lib/registry";

/** The codes of surgeons by the place of their pseudonym among the column's labels: S1, S2 … in the order in which the registry first heard of them. */
function codesByLabel(frame: Frame) {
  const column = frame.columns.surgeon;
  if (column?.kind !== "label") throw new RangeError("surgeonCodes requires the frame's column surgeon, received a frame without it");
  const codes = new Map<number, string>();
  // rows of a frame stand in the order of their entities, which is the order in which they came: no later batch changes it
  for (const label of column.values) if (label >= 0 && !codes.has(label)) codes.set(label, `S${codes.size + 1}`);
  return { column, codes };
}

/** The surgeon's code of each row of the frame of segments, `null` where none was recorded. */
export function surgeonCodes(frame: Frame): (row: number) => string | null {
  const { column, codes } = codesByLabel(frame);
  return (row) => codes.get(column.values[row] ?? -1) ?? null;
}

/** A surgeon's code by pseudonym; *S?* for one whom no row held names any more. */
export function surgeonNames(frame: Frame): (pseudonym: string) => string {
  const { column, codes } = codesByLabel(frame);
  const names = new Map(column.labels.map((label, i) => [label, codes.get(i)]));
  return (pseudonym) => names.get(pseudonym) ?? "S?";
}
