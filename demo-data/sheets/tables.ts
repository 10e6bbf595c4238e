import { type Field, fieldsOf, snake, type TableName, type Value } from "@/lib/codebook";
import type { Person } from "../scenario/types";
import { cellOf } from "./cell";
import { recordOf } from "./csv";
import { rowsOf } from "./seven-years";

type Records = Readonly<Record<string, Value | undefined>>;
export type TableFile = { readonly name: string; readonly text: string };

const namesOfSegment = ["bone", "side", "surgeryDay"] as const;
const workedOut: ReadonlySet<string> = new Set(["surgeryYear", "ageAtSurgeryYears", "unit", "proportionReference", "eventNumber"]);

/** The whole unit once more as one clean comma-separated file a table, with template headers; every file can come alone and in any order. */
export function tableFiles(persons: readonly Person[]): readonly TableFile[] {
  const segments = rowsOf(persons);
  const named = segments.map((row) => ({ row, name: nameOf(row) }));
  return [
    file(
      "persons",
      "person",
      persons.map(({ identity, fields }) => ({ localId: identity.localId, ...fields })),
    ),
    file(
      "body-measures",
      "bodyMeasure",
      persons.flatMap(({ identity, measures }) => measures.map((measure) => ({ localId: identity.localId, ...measure }))),
    ),
    segmentFile(
      segments.map(({ person, segment }) => ({
        dateOfBirth: person.identity.dateOfBirth,
        surgeonName: person.surgeons[segment.operation],
        aetiology: person.fields.aetiology,
        localId: person.identity.localId,
        ...segment.fields,
      })),
    ),
    file(
      "visits",
      "visit",
      named.flatMap(({ row, name }) => row.segment.visits.map((visit) => ({ ...name, ...visit }))),
    ),
    file(
      "events",
      "event",
      named.flatMap(({ row, name }) => row.segment.events.map((event) => ({ ...name, ...event }))),
    ),
    file(
      "scores",
      "score",
      persons.flatMap(({ identity, scores }) => scores.map((score) => ({ localId: identity.localId, ...score }))),
    ),
  ];
}

function nameOf({ person, segment: { fields } }: ReturnType<typeof rowsOf>[number]): Records {
  return { localId: person.identity.localId, ...Object.fromEntries(namesOfSegment.map((id) => [id, fields[id]])) };
}

type Column = { readonly id: string; readonly header: string; readonly kind: Field["kind"] };
const localId: Column = { id: "localId", header: "local_id", kind: "keyed" };

function file(name: string, table: TableName, records: readonly Records[]): TableFile {
  return { name: `tables/${name}.csv`, text: textOf([localId, ...columnsOf(table)], records) };
}

function segmentFile(records: readonly Records[]): TableFile {
  const fromFileOnly: readonly Column[] = [
    localId,
    { id: "dateOfBirth", header: "date_of_birth", kind: "day" },
    { id: "surgeonName", header: "surgeon", kind: "keyed" },
    // told beside the bone, since a short one is to be expected in dysplasia
    { id: "aetiology", header: "aetiology", kind: "code" },
  ];
  return { name: "tables/segments.csv", text: textOf([...fromFileOnly, ...columnsOf("segment")], records) };
}

function columnsOf(table: TableName): readonly Column[] {
  return fieldsOf(table)
    .filter(([id, field]) => !field.madeByStrip && !workedOut.has(id))
    .map(([id, field]) => ({ id, header: snake(id), kind: field.kind }));
}

/** Columns that hold nothing are left out. */
function textOf(columns: readonly Column[], records: readonly Records[]): string {
  const filled = columns.filter(({ id }) => records.some((record) => record[id] !== null && record[id] !== undefined));
  const lines = [filled.map(({ header }) => header), ...records.map((record) => filled.map(({ id, kind }) => cellOf(record[id], kind)))];
  return `${lines.map((cells) => recordOf(cells, ",")).join("\n")}\n`;
}
