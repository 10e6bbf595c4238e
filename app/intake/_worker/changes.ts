import { labelOfCode, type Rows, type TableName, tableNames } from "@/lib/codebook";
import type { Change, Prepared, TableCounts } from "@/lib/intake";
import type { AbsentShown, ChangeShown, CorrectedShown } from "../_talk/view";

const mostListed = 500;

/** In which fields the rows differ from those held, and how many rows each; a blank changes nothing, and a correction by hand stands. */
export function changesOf({ news }: Prepared): readonly ChangeShown[] {
  const counts = new Map<string, ChangeShown>();
  for (const { table, field, corrected } of news?.changes ?? []) {
    if (corrected) continue;
    const name = `${table} ${field}`;
    counts.set(name, { table, field, rows: (counts.get(name)?.rows ?? 0) + 1 });
  }
  return [...counts.values()].sort((a, b) => tableNames.indexOf(a.table) - tableNames.indexOf(b.table) || b.rows - a.rows);
}

/** Cells that say something else than a correction by hand and the sheet before it. */
export function correctedIn({ news }: Prepared): readonly Change[] {
  return (news?.changes ?? []).filter(({ corrected }) => corrected !== null);
}

export function correctedShown(prepared: Prepared): { cells: CorrectedShown[]; of: number } {
  const corrected = correctedIn(prepared);
  const cells = corrected
    .slice(0, mostListed)
    .map(({ file, row, table, field, from, to, days }) => ({ file, row, table, field, isDay: days !== null, held: from, says: to }));
  return { cells, of: corrected.length };
}

/** Segments that are held and not in the files, as far as the registry can name them. They stay held. */
export function absentOf({ news, counts }: Prepared): { rows: AbsentShown[]; of: TableCounts } {
  const none = Object.fromEntries(tableNames.map((table) => [table, 0])) as Record<TableName, number>;
  const absent = news?.absent.segment ?? [];
  return { rows: absent.slice(0, mostListed).map((row) => ({ table: "segment", words: wordsOf(row) })), of: counts.absent ?? none };
}

/** `Femur, left, operated on in 2022, quarter 3, at 31 years: magnetic nail`. */
function wordsOf({ bone, side, surgeryYear, surgeryQuarter, ageAtSurgeryYears, device }: Rows["segment"]): string {
  const quarter = surgeryQuarter === null ? "" : `, quarter ${surgeryQuarter}`;
  const age = ageAtSurgeryYears === null ? "" : `, at ${ageAtSurgeryYears} years`;
  const how = device === null ? "" : `: ${labelOfCode(device).toLowerCase()}`;
  return `${labelOfCode(bone)}, ${side}, operated on in ${surgeryYear}${quarter}${age}${how}`;
}
