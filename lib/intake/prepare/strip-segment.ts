import { fieldOf } from "@/lib/codebook";
import { type Fact, isDay, type RawDay } from "../cells/cell-read";
import type { NumberField } from "../cells/field-kinds";
import { tidy, within } from "../cells/read-number";
import { ageAt, ageBanded, auditYearOf, calendarDateOf, dayOnLine, quarterOf } from "../strip";
import { type AnyRow, blankRow } from "./blank-row";
import type { Draft, Part, PlacedFact } from "./draft";
import type { Keyed } from "./keyed-drafts";
import type { StripOptions } from "./strip-options";
import type { Surgery } from "./time-of-surgery";

const ageField = fieldOf("segment", "ageAtSurgeryYears") as NumberField;
const oldest = 90;

/** A day on the person's own line, whether it came as a date or as time since surgery. `null` when neither can be placed. */
export function placeDay(day: RawDay, surgeryDay: number | null, keyed: Keyed): number | null {
  if ("on" in day) return dayOnLine(day.on, keyed.shiftDays);
  return surgeryDay === null ? null : surgeryDay + day.after;
}

/** Values of a part with its days placed, into a row. */
export function placed({ values }: Part, surgeryDay: number | null, keyed: Keyed, row: AnyRow = {}): AnyRow {
  for (const field in values) {
    const value = values[field];
    if (value === undefined) continue;
    row[field] = isDay(value) ? placeDay(value, surgeryDay, keyed) : value;
  }
  return row;
}

/** The stripped row of a segment: year, quarter and audit year from the date, age in bands, the surgeon by code. */
export function stripSegment(
  draft: Draft,
  part: Part,
  keyed: Keyed,
  surgery: Surgery,
  options: StripOptions,
): { row: AnyRow; facts: PlacedFact[] } {
  const age = ageOf(draft, part, surgery);
  const row = placed(part, surgery.day, keyed, blankRow("segment"));
  row.person = keyed.person;
  row.surgeryDay = surgery.day;
  row.surgeryYear = surgery.line === "dated" ? surgery.date.year : surgery.year;
  row.surgeryQuarter = surgery.line === "dated" && !options.yearOnly ? quarterOf(surgery.date) : null;
  row.auditYear = surgery.line === "dated" ? auditYearOf(surgery.date, options.auditYearStartsIn) : null;
  row.surgeon = keyed.surgeon;
  row.ageAtSurgeryYears = age.years;
  return { row, facts: age.facts };
}

function ageOf(draft: Draft, part: Part, surgery: Surgery): { years: number | null; facts: PlacedFact[] } {
  const typed = part.values.ageAtSurgeryYears;
  const facts: PlacedFact[] = [];
  const exact = draft.birth !== null && surgery.line === "dated" ? ageFromBirth(draft.birth, surgery) : undefined;
  if (exact === null) facts.push(about("dateOfBirth", { code: "date-impossible", found: "a birth after surgery" }));
  if (typeof exact === "number")
    for (const fact of within(tidy(exact), ageField, "years").facts) facts.push(about("dateOfBirth", describeAge(fact)));
  if (typeof exact === "number" && typeof typed === "number" && Math.abs(exact - typed) > 1.05) {
    const found = "an age that differs from that of birth and surgery by more than a year";
    facts.push(about("ageAtSurgeryYears", { code: "age-against-year", found }));
  }
  const years = exact ?? (typeof typed === "number" ? typed : null);
  if (years === null) return { years: null, facts };
  if (years > oldest)
    facts.push(about(draft.birth === null ? "ageAtSurgeryYears" : "dateOfBirth", { code: "age-banded", found: "an age above 90" }));
  return { years: ageBanded(years), facts };
}

function about(field: string, fact: Fact): PlacedFact {
  return { ...fact, column: null, field };
}

function ageFromBirth(birth: number, surgery: Surgery & { line: "dated" }): number | null {
  const born = calendarDateOf(birth);
  const { year, month, day } = surgery.date;
  const later = born.year > year || (born.year === year && (born.month > month || (born.month === month && born.day > day)));
  return later ? null : ageAt(born, surgery.date);
}

// an exact age is nearly a birth date: the number isn't repeated
function describeAge(fact: Fact): Fact {
  return { ...fact, found: "an age outside the limits, from birth and surgery" };
}
