import { type Day, dmyOf } from "../scenario/calendar";
import type { Person } from "../scenario/types";
import { recordOf } from "./csv";
import { type Fault, faulty, type Plant } from "./faults";
import { lastTwoYears } from "./raw-one-sheet";
import type { Row } from "./seven-years";
import { bodyFaults, eventFaults, scoreFaults, visitFaults } from "./table-faults";
import { said } from "./trade-words";

export type RawTable = { readonly name: string; readonly raw: string; readonly clean: string; readonly faults: readonly Fault[] };
type Lines = { readonly headers: readonly string[]; readonly rows: readonly (readonly string[])[] };

const date = (day: Day | null | undefined) => (day === null || day === undefined ? "" : dmyOf(day, "/"));
const text = (value: number | null | undefined) => (value === null || value === undefined ? "" : String(value));
const cm = (value: number | null | undefined) => (value === null || value === undefined ? "" : (value / 10).toFixed(1));
const yesNo = (flag: boolean | null | undefined) => (flag === null || flag === undefined ? "" : flag ? "yes" : "no");

/** The unit's sheets of one table each for its last two years, comma-separated, with fifteen faults between them; each has a clean twin. */
export function rawTables(persons: readonly Person[]): readonly RawTable[] {
  const rows = lastTwoYears(persons);
  const recent = persons.filter((person) => rows.some((row) => row.person === person));
  return [
    withFaults("raw-visits", visitLines(rows), visitFaults(lengthenedTwice(recent))),
    withFaults("raw-events", eventLines(rows), eventFaults),
    withFaults("raw-scores", scoreLines(recent), scoreFaults),
    withFaults("raw-body-measures", bodyLines(recent), bodyFaults),
  ];
}

function lengthenedTwice(persons: readonly Person[]): ReadonlySet<string> {
  const twice = persons.filter(
    ({ segments }) => new Set(segments.map(({ fields }) => `${fields.bone} ${fields.side}`)).size < segments.length,
  );
  return new Set(twice.map(({ identity }) => identity.localId));
}

function withFaults(name: string, { headers, rows }: Lines, plants: readonly Plant[]): RawTable {
  const planted = faulty({ file: `${name}.csv`, headers, rows, firstLine: 2 }, plants);
  return { name, raw: textOf(planted), clean: textOf({ headers, rows }), faults: planted.faults };
}

const textOf = ({ headers, rows }: Lines) => `${[headers, ...rows].map((cells) => recordOf(cells, ",")).join("\r\n")}\r\n`;

const nameOf = ({ person, segment: { fields } }: Row): readonly string[] => [
  person.identity.localId,
  said.label(fields.bone),
  fields.side === "left" ? "L" : "R",
  date(fields.surgeryDay),
];

function visitLines(rows: readonly Row[]): Lines {
  const headers = [
    "Hosp No",
    "Bone",
    "Side",
    "Op date",
    "Clinic date",
    "Length so far (mm)",
    "Measured by",
    "Cortices",
    "WB status",
    "Knee rom",
    "Extension deficit",
    "Ankle DF",
    "VAS",
    "Painkillers",
    "Pin grade",
  ];
  const lines = rows.flatMap((row) =>
    row.segment.visits.map((visit) => [
      ...nameOf(row),
      date(visit.visitDay),
      text(visit.distractedMm),
      said.label(visit.distractedBy),
      text(visit.cortices),
      said.label(visit.weightBearing),
      text(visit.kneeFlexionDeg),
      text(visit.kneeExtensionDeg),
      text(visit.ankleDorsiflexionDeg),
      text(visit.painAtRest),
      said.label(visit.analgesia),
      text(visit.pinSiteGrade),
    ]),
  );
  return { headers, rows: lines };
}

function eventLines(rows: readonly Row[]): Lines {
  const headers = [
    "Hosp No",
    "Bone",
    "Side",
    "Op date",
    "Surname",
    "Complication",
    "Onset",
    "Treatment",
    "Planned",
    "Plan changed",
    "Goal missed",
    "Resolved",
    "Date resolved",
    "Sequela",
  ];
  const lines = rows.flatMap((row) =>
    row.segment.events.map((event) => [
      ...nameOf(row),
      row.person.identity.surname,
      said.complication(event.eventType),
      date(event.onsetDay),
      said.treatment(event.handling),
      yesNo(event.planned),
      yesNo(event.planChanged),
      yesNo(event.goalMissed),
      yesNo(event.resolved),
      date(event.resolvedDay),
      said.label(event.sequela),
    ]),
  );
  return { headers, rows: lines };
}

function scoreLines(persons: readonly Person[]): Lines {
  const lines = persons.flatMap(({ identity, scores }) =>
    scores.map((score) => [identity.localId, score.scoreCode, date(score.scoreDay), text(score.scoreValue)]),
  );
  return { headers: ["Hosp No", "Score", "Date", "Value"], rows: lines };
}

function bodyLines(persons: readonly Person[]): Lines {
  const headers = [
    "Hosp No",
    "Date measured",
    "Occasion",
    "Height (cm)",
    "Sitting height (cm)",
    "Arm span (cm)",
    "Weight (kg)",
    "How measured",
    "Left femur length (mm)",
    "Right femur length (mm)",
    "Left tibia length (mm)",
    "Right tibia length (mm)",
  ];
  const lines = persons.flatMap(({ identity, measures }) =>
    measures.map((measure) => [
      identity.localId,
      date(measure.bodyDay),
      said.label(measure.occasion),
      cm(measure.statureMm),
      cm(measure.sittingHeightMm),
      cm(measure.armSpanMm),
      text(measure.weightKg),
      said.label(measure.statureHow),
      text(measure.femurLeftMm),
      text(measure.femurRightMm),
      text(measure.tibiaLeftMm),
      text(measure.tibiaRightMm),
    ]),
  );
  return { headers, rows: lines };
}
