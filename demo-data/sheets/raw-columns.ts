import { type Day, dmyOf } from "../scenario/calendar";
import type { SegmentDraft } from "../scenario/types";
import { commentOf, toldInComment } from "./comments";
import { measureOf, type Row } from "./seven-years";
import { said } from "./trade-words";

export type RawColumn = { readonly header: string; readonly cell: (row: Row) => string };

const date = (day: Day | null | undefined) => (day === null || day === undefined ? "" : dmyOf(day, "/"));
const comma = (value: number) => String(value).replace(".", ",");
const mm = (value: number | null | undefined) => (value === null || value === undefined ? "" : comma(value));
const cm = (value: number | null | undefined) => (value === null || value === undefined ? "" : (value / 10).toFixed(1).replace(".", ","));
const yesNo = (flag: boolean | null | undefined) => (flag === null || flag === undefined ? "" : flag ? "Y" : "N");

const person = (header: string, cell: (row: Row["person"]) => string): RawColumn => ({ header, cell: ({ person: one }) => cell(one) });
const segment = (header: string, cell: (fields: SegmentDraft) => string): RawColumn => ({
  header,
  cell: ({ segment: { fields } }) => cell(fields),
});

const identifiers: readonly RawColumn[] = [
  person("Hosp No", ({ identity }) => identity.localId),
  person("NHS No", ({ identity }) => identity.nhsNo),
  person("Surname", ({ identity }) => identity.surname),
  person("First name", ({ identity }) => identity.firstName),
  person("DOB", ({ identity }) => date(identity.dateOfBirth)),
  person("Sex", ({ fields }) => (fields.sex === "female" ? "F" : "M")),
  person("Tel", ({ identity }) => identity.phone),
  person("Email", ({ identity }) => identity.email),
  { header: "Consultant", cell: ({ person: one, segment: { operation } }) => one.surgeons[operation] ?? "" },
];

const background: readonly RawColumn[] = [
  person("Diagnosis", ({ fields }) => said.diagnosis(fields.aetiology)),
  person("Reason for lengthening", ({ fields }) => said.indication(fields.indication)),
  person("Smoker", ({ fields }) => said.smoking(fields.smoking)),
  person("Low vitamin D", ({ fields }) => yesNo(fields.vitaminDDeficiency)),
  person("Consent", ({ fields }) => said.consent(fields.permittedUse)),
];

const operation: readonly RawColumn[] = [
  segment("Date of op", ({ surgeryDay }) => date(surgeryDay)),
  segment("Segment", ({ bone }) => said.label(bone)),
  segment("Side", ({ side }) => (side === "left" ? "L" : "R")),
  segment("Procedure", ({ procedure }) => (procedure === "transport" ? "Bone transport" : "Lengthening")),
  segment("Implant", ({ device }) => said.device(device)),
  { header: "Serial No", cell: (row) => serialNo(row) },
  segment("Entry", ({ entry }) => said.entry(entry)),
  segment("Nail diameter (mm)", ({ nailDiameterMm }) => mm(nailDiameterMm)),
  segment("Stroke (mm)", ({ nailStrokeMm }) => mm(nailStrokeMm)),
  segment("Reamed to (mm)", ({ reamedDiameterMm }) => mm(reamedDiameterMm)),
  segment("Osteotomy", ({ osteotomyTechnique }) => said.osteotomy(osteotomyTechnique)),
  segment("Osteotomy site", ({ osteotomySite }) => (osteotomySite === "middle" ? "Midshaft" : said.label(osteotomySite))),
  segment("Levels", ({ osteotomyLevels }) => mm(osteotomyLevels)),
  segment("Releases", (fields) => releases(fields)),
  segment("Bone length (mm)", ({ boneLengthBeforeMm }) => mm(boneLengthBeforeMm)),
  segment("Target (cm)", ({ plannedGainMm }) => cm(plannedGainMm)),
  segment("Rate (mm/day)", ({ prescribedRateMmPerDay }) => mm(prescribedRateMmPerDay)),
  segment("Steps", ({ prescribedStepsPerDay }) => mm(prescribedStepsPerDay)),
];

const course: readonly RawColumn[] = [
  segment("Start of distraction", ({ distractionStartDay }) => date(distractionStartDay)),
  segment("Last distraction", ({ distractionEndDay }) => date(distractionEndDay)),
  segment("Reason stopped", ({ planChangeReason }) => said.label(planChangeReason)),
  segment("Gain (cm)", ({ gainMm }) => cm(gainMm)),
  segment("Last x-ray not united", ({ lastNotHealedDay }) => date(lastNotHealedDay)),
  segment("Date consolidated", ({ consolidationDay }) => date(consolidationDay)),
  segment("FWB (days)", ({ fullWeightBearingDay, surgeryDay }) =>
    fullWeightBearingDay ? String(fullWeightBearingDay - (surgeryDay ?? 0)) : "",
  ),
  segment("Bone grafting date", ({ rescueDay }) => date(rescueDay)),
  segment("Frame off", ({ fixatorRemovalDay }) => date(fixatorRemovalDay)),
  segment("Nail out", ({ implantRemovalDay }) => date(implantRemovalDay)),
  segment("Reason for removal", ({ implantOutReason }) => said.label(implantOutReason)),
  segment("Outcome", ({ endState }) => said.label(endState)),
  segment("Last x-ray", ({ lastFilmDay }) => date(lastFilmDay)),
  segment("Last seen", ({ lastFollowUpDay }) => date(lastFollowUpDay)),
  segment("HI", (fields) => indexOf(fields)),
  { header: "Height pre-op (cm)", cell: (row) => cm(measureOf(row, "before").statureMm) },
  { header: "Final height (cm)", cell: (row) => cm(measureOf(row, "final").statureMm) },
  { header: "Weight (kg)", cell: (row) => mm(measureOf(row, "before").weightKg) },
];

const told: readonly RawColumn[] = [0, 1].flatMap((index) => [
  { header: `Complication ${index + 1}`, cell: (row) => complication(row, index) },
  { header: `Complication ${index + 1} date`, cell: (row) => (toldInComment(row) ? "" : date(row.segment.events[index]?.onsetDay)) },
  { header: `Complication ${index + 1} treatment`, cell: (row) => (toldInComment(row) ? "" : treatment(row, index)) },
]);

/** The columns of the sheet as the invented unit really keeps it. */
export const rawColumns: readonly RawColumn[] = [
  ...identifiers,
  ...background,
  ...operation,
  ...course,
  ...told,
  { header: "Comments", cell: commentOf },
];

function complication(row: Row, index: number): string {
  if (toldInComment(row)) return "";
  const event = row.segment.events[index];
  if (event) return said.complication(event.eventType);
  return index === 0 && row.segment.fields.eventsLookedFor === "fully" ? "None" : "";
}

function treatment({ segment: { events, fields } }: Row, index: number): string {
  const handling = events[index]?.handling;
  const frame = fields.fixatorRemovalDay !== null && fields.fixatorRemovalDay !== undefined;
  return handling === "implant-exchanged" && frame ? "Frame exchange" : said.treatment(handling);
}

/** Made up for the demo: the header alone is enough for the column to be dropped. */
export function serialNo({ person: { case: kind }, segment: { operation: number, fields } }: Row): string {
  return `DEMO-${String(kind.index * 37 + number * 11 + (fields.side === "left" ? 3 : 5)).padStart(6, "0")}`;
}

function releases(fields: SegmentDraft): string {
  const words = {
    releaseIliotibialBand: "ITB",
    releaseRectus: "rectus",
    releaseAdductors: "adductors",
    releaseHamstrings: "hamstrings",
    releaseGastrocnemius: "gastroc",
    releasePeronealNerve: "peroneal nerve",
    releaseFascia: "fascia",
  } as const;
  return (Object.keys(words) as (keyof typeof words)[])
    .filter((id) => fields[id] === true)
    .map((id) => words[id])
    .join(" + ");
}

/** The index as the unit types it: from surgery, to one decimal; left out for one row in five. */
function indexOf({ surgeryDay, consolidationDay, gainMm, caseOrder }: SegmentDraft): string {
  if (!surgeryDay || !consolidationDay || !gainMm || (caseOrder ?? 0) % 5 === 0) return "";
  return (((consolidationDay - surgeryDay) * 10) / gainMm).toFixed(1).replace(".", ",");
}
