import { type Day, dayOf, dmyOf, partsOf } from "../scenario/calendar";
import type { Person, SegmentDraft } from "../scenario/types";
import { commentOf } from "./comments";
import { type Fault, faulty } from "./faults";
import { measureOf, type Row, rowsOf } from "./seven-years";
import { said } from "./trade-words";
import { columnName, type DayFormat, type WorkbookCell, workbookOf } from "./workbook";
import { workbookFaults } from "./workbook-faults";

const date = (day: Day | null | undefined) => (day === null || day === undefined ? "" : dmyOf(day, "/"));
const text = (value: number | null | undefined) => (value === null || value === undefined ? "" : String(value));
const of = (header: string, cell: (fields: SegmentDraft) => string) => ({ header, cell: ({ segment: { fields } }: Row) => cell(fields) });

const columns: readonly { readonly header: string; readonly cell: (row: Row) => string }[] = [
  { header: "Hosp No", cell: ({ person }) => person.identity.localId },
  { header: "Name", cell: ({ person: { identity } }) => `${identity.firstName} ${identity.surname}` },
  { header: "Birthdate", cell: ({ person }) => date(person.identity.dateOfBirth) },
  { header: "Sex", cell: ({ person }) => (person.fields.sex === "female" ? "F" : "M") },
  { header: "Surgeon", cell: ({ person, segment }) => person.surgeons[segment.operation] ?? "" },
  { header: "Diagnosis", cell: ({ person }) => said.diagnosis(person.fields.aetiology) },
  { header: "Indication", cell: ({ person }) => said.indication(person.fields.indication) },
  of("Op date", ({ surgeryDay }) => date(surgeryDay)),
  of("Segment", ({ bone, side }) => `${said.label(bone)} ${side === "left" ? "L" : "R"}`),
  of("Procedure", ({ procedure }) => said.label(procedure)),
  of("Implant type", ({ device }) => said.label(device)),
  of("Nail size (mm)", ({ nailDiameterMm }) => text(nailDiameterMm)),
  of("Stroke (mm)", ({ nailStrokeMm }) => text(nailStrokeMm)),
  of("Reamed to (mm)", ({ reamedDiameterMm }) => text(reamedDiameterMm)),
  of("Bone length pre-op (mm)", ({ boneLengthBeforeMm }) => text(boneLengthBeforeMm)),
  of("Levels", ({ osteotomyLevels }) => text(osteotomyLevels)),
  of("Planned gain (mm)", ({ plannedGainMm }) => text(plannedGainMm)),
  of("Distraction started", ({ distractionStartDay }) => date(distractionStartDay)),
  of("Distraction finished", ({ distractionEndDay }) => date(distractionEndDay)),
  of("Gain (mm)", ({ gainMm }) => text(gainMm)),
  of("Last unhealed x-ray", ({ lastNotHealedDay }) => date(lastNotHealedDay)),
  of("Date healed", ({ consolidationDay }) => date(consolidationDay)),
  of("FWB date", ({ fullWeightBearingDay }) => date(fullWeightBearingDay)),
  of("Frame removal", ({ fixatorRemovalDay }) => date(fixatorRemovalDay)),
  of("Nail removal", ({ implantRemovalDay }) => date(implantRemovalDay)),
  of("Reason for removal", ({ implantOutReason }) => said.label(implantOutReason)),
  of("Last x-ray", ({ lastFilmDay }) => date(lastFilmDay)),
  of("Last review", ({ lastFollowUpDay }) => date(lastFollowUpDay)),
  { header: "Height pre-op (mm)", cell: (row) => text(measureOf(row, "before").statureMm) },
  {
    header: "Complication 1",
    cell: ({ segment: { events, fields } }) =>
      events[0] ? said.complication(events[0].eventType) : fields.eventsLookedFor === "fully" ? "none" : "",
  },
  { header: "Complication 1 date", cell: ({ segment }) => date(segment.events[0]?.onsetDay) },
  { header: "Complication 1 treatment", cell: ({ segment }) => said.treatment(segment.events[0]?.handling) },
  { header: "Notes", cell: commentOf },
];

export type RawWorkbook = { readonly raw: Uint8Array; readonly clean: Uint8Array; readonly faults: readonly Fault[] };

const year = 2022;
const sheetName = `Log ${year}`;
const title = `Lengthening log ${year} – INVENTED unit, invented persons, no real patient`;

/** One year as a workbook: a title merged over the columns, dates as numbers of the 1904 system in three formats, a second sheet of words; ten faults. */
export function rawWorkbook(persons: readonly Person[]): RawWorkbook {
  const headers = columns.map(({ header }) => header);
  const rows = rowsOf(persons)
    .filter(({ segment }) => partsOf(segment.fields.surgeryDay ?? 0).year === year)
    .map((row) => columns.map(({ cell }) => cell(row)));
  const planted = faulty({ file: "raw-workbook.xlsx", sheet: sheetName, headers, rows, firstLine: 3 }, workbookFaults);
  return { raw: written(planted.headers, planted.rows), clean: written(headers, rows), faults: planted.faults };
}

function written(headers: readonly string[], rows: readonly (readonly string[])[]): Uint8Array {
  const head: readonly WorkbookCell[] = headers.map((header) => ({ text: header }));
  const log = {
    name: sheetName,
    rows: [[{ text: title }], head, ...rows.map((row) => row.map(cellOf))],
    merged: [`A1:${columnName(headers.length - 1)}1`],
  };
  const words = {
    name: "Read me",
    rows: [[{ text: "Everything in this workbook is invented: no person, hospital or implant brand of it exists." }]],
  };
  return workbookOf([log, words], "1904");
}

const formatsByColumn: readonly DayFormat[] = ["dd/mm/yyyy", "d mmm yy", "yyyy-mm-dd"];

/** Numbers and dates as a spreadsheet holds them; the hospital number stays text, or its leading zero would be lost. */
function cellOf(cell: string, column: number): WorkbookCell {
  const day = /^(\d\d)\/(\d\d)\/(\d{4})$/.exec(cell);
  if (cell === "") return null;
  if (day) return { day: dayOf(Number(day[3]), Number(day[2]), Number(day[1])), as: formatsByColumn[column % 3] ?? "dd/mm/yyyy" };
  return column > 0 && /^-?\d+(\.\d+)?$/.test(cell) ? { number: Number(cell) } : { text: cell };
}
