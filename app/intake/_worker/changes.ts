import { labelOfCode, type Rows, type TableName, tableNames } from "@/lib/codebook";
import type { Change, Prepared, TableCounts } from "@/lib/intake";
import type { AbsentShown, CellChanged, ChangeShown, CorrectedShown } from "../_talk/view";

const mostListed = 500;
const mostOfAField = 50;

/** In which fields the rows differ from those held, and how many rows each; a blank changes nothing, and a correction by hand stands. */
export function changesOf({ news }: Prepared): readonly ChangeShown[] {
  const counts = new Map<string, ChangeShown>();
  for (const change of news?.changes ?? []) {
    if (change.corrected) continue;
    const { table, field } = change;
    const { rows, cells } = counts.get(`${table} ${field}`) ?? { rows: 0, cells: [] };
    const shown = cells.length < mostOfAField ? [...cells, cellChanged(change)] : cells;
    counts.set(`${table} ${field}`, { table, field, rows: rows + 1, cells: shown });
  }
  return [...counts.values()].sort((a, b) => tableNames.indexOf(a.table) - tableNames.indexOf(b.table) || b.rows - a.rows);
}

function cellChanged({ file, row, from, to, days }: Change): CellChanged {
  return { file, row, isDay: days !== null, held: from, says: to };
}

/** Cells that say something else than a correction by hand and the sheet before it. */
export function correctedIn({ news }: Prepared): readonly Change[] {
  return (news?.changes ?? []).filter(({ corrected }) => corrected !== null);
}

export function correctedShown(prepared: Prepared): { cells: CorrectedShown[]; of: number } {
  const corrected = correctedIn(prepared);
  const cells = corrected.slice(0, mostListed).map((change) => ({ ...cellChanged(change), table: change.table, field: change.field }));
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
