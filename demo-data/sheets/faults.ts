/** A sheet as text, before it is written. `firstLine` is the file's own number of its first row. */
export type Cells = {
  readonly file: string;
  readonly headers: readonly string[];
  readonly rows: readonly (readonly string[])[];
  readonly firstLine: number;
};

/** A planted fault as the key has it: where it stands, the finding that must name it, what was typed, and how to mend it. */
export type Fault = {
  readonly file: string;
  readonly row: number;
  readonly column: string | null;
  readonly code: string;
  readonly typed: string | null;
  readonly mended: string | null;
  readonly mend: string;
};

/** How to plant a fault: in the first fitting row that has none yet, in one cell; or as a row more at the end. */
export type Plant = {
  readonly code: string;
  readonly column: string | null;
  readonly mend: string;
  readonly fits: (row: Named, rows: readonly Named[]) => boolean;
  /** What is typed in place of the cell; a plant without it repeats the whole row at the end of the sheet. */
  readonly typed?: (row: Named) => string;
};
export type Named = Readonly<Record<string, string>>;

/** Plants every fault in a row of its own. @throws RangeError when no row fits */
export function faulty(
  cells: Cells,
  plants: readonly Plant[],
): { readonly rows: readonly (readonly string[])[]; readonly faults: readonly Fault[] } {
  const named = cells.rows.map((row) => Object.fromEntries(cells.headers.map((header, index) => [header, row[index] ?? ""])));
  const rows = cells.rows.map((row) => [...row]);
  const taken = new Set<string>();
  const faults: Fault[] = [];
  for (const plant of plants) {
    const index = named.findIndex((row) => !taken.has(personOf(row, cells.headers)) && plant.fits(row, named));
    const row = named[index];
    if (!row) throw new RangeError(`faulty requires a row for each fault of ${cells.file}, received none for ${plant.code}`);
    taken.add(personOf(row, cells.headers));
    faults.push(plantedIn({ cells, plant, row, index, rows }));
  }
  return { rows, faults };
}

/** Faults lie in rows of different persons, so that no one of them explains another's finding. */
const personOf = (row: Named, headers: readonly string[]) => row[headers[0] ?? ""] ?? "";

type Planting = { readonly cells: Cells; readonly plant: Plant; readonly row: Named; readonly index: number; readonly rows: string[][] };

function plantedIn({ cells, plant, row, index, rows }: Planting): Fault {
  const about = { file: cells.file, column: plant.column, code: plant.code, mend: plant.mend };
  if (!plant.typed || plant.column === null) {
    rows.push([...(cells.rows[index] ?? [])]);
    return { ...about, row: cells.firstLine + rows.length - 1, typed: null, mended: null };
  }
  const typed = plant.typed(row);
  const at = cells.headers.indexOf(plant.column);
  rows[index]?.splice(at, 1, typed);
  return { ...about, row: cells.firstLine + index, typed, mended: row[plant.column] ?? "" };
}
