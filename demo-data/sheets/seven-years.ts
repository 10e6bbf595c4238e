import { fieldsOf, snake, type TableName, type Value } from "@/lib/codebook";
import { isoOf } from "../scenario/calendar";
import type { Measured, Person, Segment } from "../scenario/types";
import { cellOf } from "./cell";
import { recordOf } from "./csv";

/** A column of the clean sheet: its template header and what it holds for a segment. */
type Column = { readonly header: string; readonly cell: (row: Row) => string };
export type Row = { readonly person: Person; readonly segment: Segment };

const eventsInARow = 3;
/** Events are one table in the codebook; a one-sheet row has them in numbered columns, without the fields that name the segment. */
const namesOfSegment = new Set(["person", "bone", "side", "surgeryDay", "eventNumber"]);
const workedOut = new Set(["surgeryYear", "ageAtSurgeryYears", "unit", "line", "proportionReference"]);
type Records = Readonly<Record<string, Value | undefined>>;

/** The rows of a sheet, one a segment, in order of surgery. */
export function rowsOf(persons: readonly Person[]): readonly Row[] {
  return persons
    .flatMap((person) => person.segments.map((segment) => ({ person, segment })))
    .sort((a, b) => orderOf(a) - orderOf(b) || a.person.case.index - b.person.case.index);
}

const orderOf = ({ segment }: Row) => segment.fields.surgeryDay ?? 0;

/** The whole unit as a clean one-sheet file: template headers, commas, ISO dates, codes. */
export function sevenYears(persons: readonly Person[]): string {
  const rows = rowsOf(persons);
  const filled = columns().filter(({ cell }) => rows.some((row) => cell(row) !== ""));
  const lines = [filled.map(({ header }) => header), ...rows.map((row) => filled.map(({ cell }) => cell(row)))];
  return `${lines.map((cells) => recordOf(cells, ",")).join("\n")}\n`;
}

function columns(): readonly Column[] {
  return [
    { header: "local_id", cell: ({ person }) => person.identity.localId },
    { header: "date_of_birth", cell: ({ person }) => isoOf(person.identity.dateOfBirth) },
    { header: "surgeon", cell: ({ person, segment }) => person.surgeons[segment.operation] ?? "" },
    ...columnsOf("person", "", ({ person }) => person.fields),
    ...columnsOf("segment", "", ({ segment }) => segment.fields),
    ...columnsOf("bodyMeasure", "_before", (row) => measureOf(row, "before")),
    ...columnsOf("bodyMeasure", "_final", (row) => measureOf(row, "final")),
    ...Array.from({ length: eventsInARow }, (_, index) =>
      columnsOf("event", `_${index + 1}`, ({ segment }) => segment.events[index] ?? {}),
    ).flat(),
  ];
}

function columnsOf(table: TableName, suffix: string, records: (row: Row) => Records): readonly Column[] {
  const skipped = (id: string) =>
    workedOut.has(id) ||
    (table === "event" && namesOfSegment.has(id)) ||
    (table === "bodyMeasure" && (id === "bodyDay" || id === "occasion"));
  return fieldsOf(table)
    .filter(([id, field]) => !skipped(id) && !field.madeByStrip)
    .map(([id, field]) => ({ header: `${snake(id)}${suffix}`, cell: (row) => cellOf(records(row)[id], field.kind) }));
}

/** The measure of a row's own operation: before on the day of its surgery, final on the day last seen. */
export function measureOf({ person, segment }: Row, occasion: Measured["occasion"]): Partial<Measured> {
  return person.measures.find((measure) => measure.occasion === occasion && measure.operation === segment.operation) ?? {};
}
