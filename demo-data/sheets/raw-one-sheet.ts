import { partsOf } from "../scenario/calendar";
import type { Person } from "../scenario/types";
import { recordOf, windows1252Bytes } from "./csv";
import type { Fault } from "./faults";
import { faulty } from "./faults";
import { oneSheetFaults } from "./one-sheet-faults";
import { rawColumns } from "./raw-columns";
import { type Row, rowsOf } from "./seven-years";

export type RawFile = { readonly name: string; readonly bytes: Uint8Array };
export type RawSheet = { readonly raw: RawFile; readonly clean: RawFile; readonly faults: readonly Fault[] };

const title = "Lengthening log 2023–2024 – INVENTED unit, invented persons, no real patient";

/** Segments of the last two years, in the order of the log. */
export function lastTwoYears(persons: readonly Person[]): readonly Row[] {
  return rowsOf(persons).filter(({ segment }) => partsOf(segment.fields.surgeryDay ?? 0).year >= 2023);
}

/** The sheet as the unit really keeps it, with fifteen faults, and its clean twin: the same rows with every fault mended. */
export function rawOneSheet(persons: readonly Person[]): RawSheet {
  const headers = rawColumns.map(({ header }) => header);
  const cells = lastTwoYears(persons).map((row) => rawColumns.map(({ cell }) => cell(row)));
  const name = "raw-one-sheet.csv";
  // the title is line 1 and the header line 2
  const { rows, faults } = faulty({ file: name, headers, rows: cells, firstLine: 3 }, oneSheetFaults);
  return {
    raw: { name, bytes: bytesOf(headers, rows) },
    clean: { name: "raw-one-sheet.clean.csv", bytes: bytesOf(headers, cells) },
    faults,
  };
}

/** Windows-1252, semicolons, a title above the header, line ends as a spreadsheet writes them. */
function bytesOf(headers: readonly string[], rows: readonly (readonly string[])[]): Uint8Array {
  const titleRow = [title, ...headers.slice(1).map(() => "")];
  return windows1252Bytes(`${[titleRow, headers, ...rows].map((row) => recordOf(row, ";")).join("\r\n")}\r\n`);
}
