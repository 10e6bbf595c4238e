import { type Day, dmyOf, partsOf } from "../scenario/calendar";
import type { Person } from "../scenario/types";
import { commentOf } from "./comments";
import { recordOf } from "./csv";
import { measureOf, type Row, rowsOf } from "./seven-years";
import { said } from "./trade-words";

const date = (day: Day | null | undefined) => (day === null || day === undefined ? "" : dmyOf(day, "."));
const text = (value: number | null | undefined) => (value === null || value === undefined ? "" : String(value));

const columns: readonly { readonly header: string; readonly cell: (row: Row) => string }[] = [
  { header: "MRN", cell: ({ person }) => person.identity.localId },
  { header: "Patient name", cell: ({ person: { identity } }) => `${identity.surname}, ${identity.firstName}` },
  { header: "Date of birth", cell: ({ person }) => date(person.identity.dateOfBirth) },
  { header: "Gender", cell: ({ person }) => (person.fields.sex === "female" ? "woman" : "man") },
  { header: "Mobile", cell: ({ person }) => person.identity.phone },
  { header: "Lead surgeon", cell: ({ person, segment }) => person.surgeons[segment.operation] ?? "" },
  { header: "Dx", cell: ({ person }) => said.diagnosis(person.fields.aetiology) },
  { header: "Indication", cell: ({ person }) => said.indication(person.fields.indication) },
  { header: "Op date", cell: ({ segment }) => date(segment.fields.surgeryDay) },
  { header: "Segment", cell: ({ segment: { fields } }) => `${said.label(fields.bone)} ${fields.side === "left" ? "L" : "R"}` },
  { header: "Device", cell: ({ segment }) => said.label(segment.fields.device) },
  { header: "Planned gain (mm)", cell: ({ segment }) => text(segment.fields.plannedGainMm) },
  { header: "Distraction start", cell: ({ segment }) => date(segment.fields.distractionStartDay) },
  { header: "Distraction end", cell: ({ segment }) => date(segment.fields.distractionEndDay) },
  { header: "Achieved gain (mm)", cell: ({ segment }) => text(segment.fields.gainMm) },
  { header: "Last film not healed", cell: ({ segment }) => date(segment.fields.lastNotHealedDay) },
  { header: "Date of union", cell: ({ segment }) => date(segment.fields.consolidationDay) },
  { header: "FWB date", cell: ({ segment }) => date(segment.fields.fullWeightBearingDay) },
  { header: "Fixator off", cell: ({ segment }) => date(segment.fields.fixatorRemovalDay) },
  { header: "Nail removal", cell: ({ segment }) => date(segment.fields.implantRemovalDay) },
  { header: "Reason for removal", cell: ({ segment }) => said.label(segment.fields.implantOutReason) },
  { header: "Last radiograph", cell: ({ segment }) => date(segment.fields.lastFilmDay) },
  { header: "Last follow-up", cell: ({ segment }) => date(segment.fields.lastFollowUpDay) },
  { header: "Height pre-op (mm)", cell: (row) => text(measureOf(row, "before").statureMm) },
  {
    header: "Complication 1",
    cell: ({ segment: { events, fields } }) =>
      events[0] ? said.complication(events[0].eventType) : fields.eventsLookedFor === "fully" ? "none" : "",
  },
  { header: "Complication 1 date", cell: ({ segment }) => date(segment.events[0]?.onsetDay) },
  { header: "Complication 1 treatment", cell: ({ segment }) => said.treatment(segment.events[0]?.handling) },
  { header: "Remarks", cell: commentOf },
];

/** One year's sheet of the unit, clean, with its own headers; who was operated on in two years stands in both sheets. */
export function yearlySheet(persons: readonly Person[], year: number): string {
  const rows = rowsOf(persons).filter(({ segment }) => partsOf(segment.fields.surgeryDay ?? 0).year === year);
  const lines = [columns.map(({ header }) => header), ...rows.map((row) => columns.map(({ cell }) => cell(row)))];
  return `\uFEFF${lines.map((cells) => recordOf(cells, ";")).join("\r\n")}\r\n`;
}
