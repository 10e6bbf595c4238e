/** A sheet as text, before it is written. `firstLine` is the file's own number of its first row. */
export type Cells = {
  readonly file: string;
  /** Of a workbook: the sheet that holds the rows. */
  readonly sheet?: string;
  readonly headers: readonly string[];
  readonly rows: readonly (readonly string[])[];
  readonly firstLine: number;
};

/** A planted fault as the key has it: where it stands, the finding that must name it, what was typed, and how to mend it. */
export type Fault = {
  readonly file: string;
  readonly sheet?: string;
  readonly row: number;
  readonly column: string | null;
  readonly code: string;
  readonly typed: string | null;
  readonly mended: string | null;
  readonly mend: string;
};

/** How to plant a fault: in a cell of the first fitting row of a person that has none yet, in a copy of that row at the end of the sheet, or in the header. */
export type Plant = {
  readonly code: string;
  readonly column: string | null;
  readonly mend: string;
  readonly fits: (row: Named, rows: readonly Named[]) => boolean;
  /** What is typed in place of the cell; without it the row stands twice as it is. */
  readonly typed?: (row: Named) => string;
  readonly in?: "copy" | "header";
};
export type Named = Readonly<Record<string, string>>;
export type Planted = {
  readonly headers: readonly string[];
  readonly rows: readonly (readonly string[])[];
  readonly faults: readonly Fault[];
};

type Sheet = { readonly headers: string[]; readonly rows: string[][] };
type Planting = { readonly cells: Cells; readonly plant: Plant; readonly row: Named; readonly index: number; readonly sheet: Sheet };

/** Plants every fault in a row of its own, of different persons, so that no one of them explains another's finding. @throws RangeError when no row fits */
export function faulty(cells: Cells, plants: readonly Plant[]): Planted {
  const named = cells.rows.map((row) => Object.fromEntries(cells.headers.map((header, index) => [header, row[index] ?? ""])));
  const sheet: Sheet = { headers: [...cells.headers], rows: cells.rows.map((row) => [...row]) };
  const taken = new Set<string>();
  const faults: Fault[] = [];
  for (const plant of plants) {
    const index = named.findIndex((row) => !taken.has(personOf(row, cells.headers)) && plant.fits(row, named));
    const row = named[index];
    if (!row) throw new RangeError(`faulty requires a row for each fault of ${cells.file}, received none for ${plant.code}`);
    taken.add(personOf(row, cells.headers));
    faults.push(plantedIn({ cells, plant, row, index, sheet }));
  }
  return { ...sheet, faults };
}

const personOf = (row: Named, headers: readonly string[]) => row[headers[0] ?? ""] ?? "";

function plantedIn(planting: Planting): Fault {
  const { cells, plant, row } = planting;
  const named = cells.sheet === undefined ? { file: cells.file } : { file: cells.file, sheet: cells.sheet };
  const about = { ...named, row: lineOf(planting), column: plant.column, code: plant.code };
  if (!plant.typed || plant.column === null) return { ...about, typed: null, mended: null, mend: plant.mend };
  const typed = plant.typed(row);
  if (plant.in === "header") return { ...about, column: typed, typed, mended: plant.column, mend: plant.mend };
  return { ...about, typed, mended: row[plant.column] ?? "", mend: plant.mend };
}

/** Types the fault and gives its line of the file. */
function lineOf({ cells, plant, row, index, sheet }: Planting): number {
  const at = plant.column === null ? -1 : cells.headers.indexOf(plant.column);
  const typed = plant.typed?.(row);
  if (plant.in === "header" && typed !== undefined) {
    sheet.headers.splice(at, 1, typed);
    return cells.firstLine - 1;
  }
  const copied = plant.in === "copy" || typed === undefined;
  if (copied) sheet.rows.push([...(cells.rows[index] ?? [])]);
  const line = copied ? sheet.rows.length - 1 : index;
  if (typed !== undefined) sheet.rows[line]?.splice(at, 1, typed);
  return cells.firstLine + line;
}
