import { type Field, fieldOf, type TableName } from "@/lib/codebook";
import { type ColumnMatch, type Dropped, type Mapping, type Prepared, type Sheet, type Target, targetId } from "@/lib/intake";
import type { ColumnShown, SheetShown } from "../_talk/view";

const sampleCount = 3;
const longestSample = 40;
const lengths = ["mm", "cm", "m", "in"] as const;
const times = ["days", "weeks", "months", "years"] as const;

type Shown = Pick<Prepared, "matches" | "sheets" | "mapping" | "dropped">;

/** The sheets with each column, what it was taken for and three cells of it. */
export function sheetsShown({ matches, sheets, mapping, dropped }: Shown): readonly SheetShown[] {
  return matches.flatMap(({ file, match }) => {
    const sheet = sheets.find((other) => other.file === file);
    const out = dropped.filter((other) => other.file === file);
    return sheet ? [{ file, kind: match.kind, columns: match.columns.map((column) => columnShown(column, { sheet, out, mapping })) }] : [];
  });
}

type Around = { readonly sheet: Sheet; readonly out: readonly Dropped[]; readonly mapping: Mapping };

function columnShown(column: ColumnMatch, { sheet, out, mapping }: Around): ColumnShown {
  const { header, target, how, unit, dropped, index } = column;
  return {
    header,
    field: target ? targetId(target) : null,
    how,
    unit: target ? (unit ?? mapping.units[header] ?? null) : null,
    units: target ? unitsOf(target, unit) : [],
    why: dropped,
    holds: out.find((other) => other.header === header)?.holds ?? [],
    samples: samplesOf(sheet, index),
  };
}

/** A length may stand in any unit of length; a day's column in a unit of time only when it holds durations. */
function unitsOf(target: Target, unit: string | null): readonly string[] {
  const field = fieldBehind(target);
  if (!field) return [];
  if (field.kind === "number" && field.unit === "mm") return lengths;
  return field.kind === "day" && unit !== null ? times : [];
}

function fieldBehind({ table, field }: Target): Field | null {
  if (table === "file") return null;
  try {
    return fieldOf(table as TableName, field);
  } catch {
    return null;
  }
}

function samplesOf({ rows }: Sheet, index: number): readonly string[] {
  const samples: string[] = [];
  for (const row of rows) {
    const cell = (row[index] ?? "").trim();
    if (cell !== "" && !samples.includes(cell)) samples.push(cell);
    if (samples.length === sampleCount) break;
  }
  return samples.map((cell) => (cell.length > longestSample ? `${cell.slice(0, longestSample)}…` : cell));
}
