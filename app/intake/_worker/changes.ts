import { labelOfCode, type Rows, type TableName, tableNames, tables, type Value } from "@/lib/codebook";
import type { StrippedRows, TableCounts } from "@/lib/intake";
import type { AbsentShown, ChangeShown } from "../_talk/view";

type Row = Readonly<Record<string, Value | undefined>>;
const mostListed = 500;

/** In which fields the rows differ from those held, and how many rows each; a blank changes nothing. */
export function changesOf(rows: StrippedRows, held: StrippedRows | null): readonly ChangeShown[] {
  if (!held) return [];
  return tableNames.flatMap((table) => {
    const known = byKey(table, held[table]);
    const counts = new Map<string, number>();
    for (const row of rows[table] as readonly Row[]) {
      const before = known.get(keyOf(table, row));
      if (before) for (const field of changedFields(row, before)) counts.set(field, (counts.get(field) ?? 0) + 1);
    }
    return [...counts].sort(([, a], [, b]) => b - a).map(([field, n]) => ({ table, field, rows: n }));
  });
}

function changedFields(row: Row, before: Row): readonly string[] {
  return Object.keys(row).filter((field) => row[field] !== null && row[field] !== before[field]);
}

/** Segments that are held and not in the files, as far as the registry can name them. They stay held. */
export function absentOf(
  rows: StrippedRows,
  held: StrippedRows | null,
  counts: TableCounts | null,
): { rows: AbsentShown[]; of: TableCounts } {
  const none = Object.fromEntries(tableNames.map((table) => [table, 0])) as Record<TableName, number>;
  if (!held || !counts) return { rows: [], of: none };
  const brought = byKey("segment", rows.segment);
  const absent = held.segment.filter((row) => !brought.has(keyOf("segment", row)));
  return { rows: absent.slice(0, mostListed).map((row) => ({ table: "segment", words: wordsOf(row) })), of: counts };
}

/** `Femur, left, operated on in 2022, quarter 3, at 31 years: magnetic nail`. */
function wordsOf({ bone, side, surgeryYear, surgeryQuarter, ageAtSurgeryYears, device }: Rows["segment"]): string {
  const quarter = surgeryQuarter === null ? "" : `, quarter ${surgeryQuarter}`;
  const age = ageAtSurgeryYears === null ? "" : `, at ${ageAtSurgeryYears} years`;
  const how = device === null ? "" : `: ${labelOfCode(device).toLowerCase()}`;
  return `${labelOfCode(bone)}, ${side}, operated on in ${surgeryYear}${quarter}${age}${how}`;
}

function byKey(table: TableName, rows: readonly Row[]): ReadonlyMap<string, Row> {
  return new Map(rows.map((row) => [keyOf(table, row), row]));
}

function keyOf(table: TableName, row: Row): string {
  return tables[table].key.map((field) => String(row[field] ?? "")).join("|");
}
