import { isDay } from "../cells/cell-read";
import { dayNumberOf } from "../strip";
import { type AnyRow, blankRow } from "./blank-row";
import { type Draft, findPart, type Part } from "./draft";
import type { Keyed } from "./keyed-drafts";
import type { StripOptions } from "./strip-options";
import { placed, stripSegment } from "./strip-segment";
import { type StrippedDraft, type StrippedPart, say } from "./stripped-draft";
import { holdsDate, type Surgery, surgeryOf } from "./time-of-surgery";

export type SheetTraits = { readonly hasSurgeryDates: boolean; readonly hasEventsLookedFor: boolean };

const namesOfSegment = ["bone", "side"] as const;

/** Strips a row of a one-sheet file: a person, a segment, and the body measures, visits, events and scores of its columns. */
export function stripOneSheet(draft: Draft, keyed: Keyed | null, options: StripOptions, traits: SheetTraits): StrippedDraft {
  const stripped: StrippedDraft = { draft, keyed, line: null, parts: [], facts: [...draft.facts] };
  const segment = findPart(draft, "segment");
  if (!keyed) missing(stripped, "localId");
  for (const field of namesOfSegment) if (segment && segment.values[field] === undefined) missing(stripped, field);
  const surgery = keyed ? surgeryOf(draft, keyed.shiftDays) : null;
  if (keyed && !surgery) missing(stripped, "surgeryDay");
  if (!segment || !keyed || !surgery) return stripped;
  if (surgery.line === "undated") checkUndated(stripped, traits);
  stripped.line = surgery.line;
  checkTimes(stripped, surgery, options.todayNumber);
  const { row, facts } = stripSegment(draft, segment, keyed, surgery, options);
  stripped.facts.push(...facts);
  lookedFor(row, draft, traits);
  stripped.parts.push(personPart(draft, keyed, surgery), { table: "segment", row, number: null });
  for (const part of draft.parts) stripped.parts.push(...besides(stripped, part, { row, keyed, surgery }));
  return stripped;
}

/** A required cell without a value; said once, also where the cell's own fault has been said. */
export function missing(stripped: StrippedDraft, field: string, why = ""): void {
  if (stripped.facts.some((fact) => fact.field === field)) return;
  say(stripped, { code: "required-missing", found: "a blank cell", field, about: why === "" ? {} : { why } });
}

function checkUndated(stripped: StrippedDraft, { hasSurgeryDates }: SheetTraits): void {
  const dated = stripped.draft.parts.some(holdsDate);
  if (dated) missing(stripped, "surgeryDay", "a surgery date: the row has other dates, which can't be placed without it");
  else if (hasSurgeryDates) say(stripped, { code: "no-surgery-date", found: "a year without a date", field: "surgeryDay" });
}

function personPart(draft: Draft, keyed: Keyed, surgery: Surgery): StrippedPart {
  const part = findPart(draft, "person");
  const values = part ? placed(part, surgery.day, keyed) : {};
  return {
    table: "person",
    number: null,
    row: { ...blankRow("person"), ...values, person: keyed.person, unit: keyed.unit, line: surgery.line },
  };
}

/** Times since surgery that reach beyond today. */
function checkTimes(stripped: StrippedDraft, surgery: Surgery, todayNumber: number): void {
  if (surgery.line !== "dated") return;
  const left = todayNumber - dayNumberOf(surgery.date);
  for (const { values, moment, number } of stripped.draft.parts) {
    for (const field in values) {
      const value = values[field];
      const id = moment === null && number === null ? field : `${field}.${moment ?? number}`;
      if (isDay(value) && "after" in value && value.after > left)
        say(stripped, { code: "date-in-future", found: "a time since surgery that ends after today", field: id });
    }
  }
}

/** An event, or the word that there was none, says that events were looked for where the file has no column for that. */
function lookedFor(row: AnyRow, draft: Draft, { hasEventsLookedFor }: SheetTraits): void {
  const hasEvent = draft.parts.some(({ table, values }) => table === "event" && values.eventType !== undefined);
  if (!hasEventsLookedFor && (hasEvent || draft.noEvents)) row.eventsLookedFor = "fully";
}

type Beside = { readonly row: AnyRow; readonly keyed: Keyed; readonly surgery: Surgery };

function besides(stripped: StrippedDraft, part: Part, { row, keyed, surgery }: Beside): StrippedPart[] {
  const name = { person: keyed.person, bone: row.bone ?? null, side: row.side ?? null, surgeryDay: surgery.day };
  const values = placed(part, surgery.day, keyed);
  const made = (table: "visit" | "event" | "score", more: AnyRow): StrippedPart => ({
    table,
    row: { ...blankRow(table), ...values, ...more },
    number: part.number,
  });
  switch (part.table) {
    case "segment":
    case "person":
      return [];
    case "bodyMeasure":
      return bodyMeasure(stripped, part, values, { row, keyed, surgery });
    case "visit":
      return wanted(stripped, part, ["visitDay"]) ? [made("visit", name)] : [];
    case "event":
      return wanted(stripped, part, ["eventType"]) ? [made("event", { ...name, consequenceOf: consequenceOf(stripped, part) })] : [];
    case "score":
      return wanted(stripped, part, ["scoreCode", "scoreDay", "scoreValue"]) ? [made("score", { person: keyed.person })] : [];
  }
}

/** The type of the event from which one followed, said by its code or, in numbered columns, by the other's number. */
function consequenceOf({ draft, facts }: StrippedDraft, { values, number }: Part): AnyRow[string] {
  const said = values.consequenceOf;
  if (typeof said !== "number") return typeof said === "string" ? said : null;
  const other = draft.parts.find((part) => part.table === "event" && part.number === said && part.number !== number)?.values.eventType;
  if (typeof other === "string") return other;
  facts.push({
    code: "not-a-code",
    found: "the number of no other event",
    column: null,
    field: `consequenceOf.${number}`,
    about: { choices: "an event, or the number of another one in this row" },
  });
  return null;
}

/** Numbered columns that are all blank are no row; some filled without what names them are a fault. */
function wanted({ facts, draft }: StrippedDraft, { values, number }: Part, required: readonly string[]): boolean {
  if (Object.keys(values).length === 0) return false;
  const lacking = required.filter((field) => values[field] === undefined);
  for (const field of lacking) {
    const id = `${field}.${number}`;
    if (facts.some((fact) => fact.field === id) || draft.noEvents) continue;
    facts.push({ code: "required-missing", found: "a blank cell", column: null, field: id });
  }
  return lacking.length === 0;
}

const seenDays = [
  "lastFollowUpDay",
  "lastFilmDay",
  "lastNotHealedDay",
  "fullWeightBearingDay",
  "consolidationDay",
  "implantRemovalDay",
  "fixatorRemovalDay",
] as const;

/** A body measure of a one-sheet row, on its own date, or on the day of surgery (before) or of last follow-up (final). */
function bodyMeasure(stripped: StrippedDraft, part: Part, values: AnyRow, { row, keyed, surgery }: Beside): StrippedPart[] {
  if (Object.keys(values).every((field) => field === "bodyDay")) return [];
  const own = values.bodyDay ?? null;
  const lastSeen = row.lastFollowUpDay ?? latest(seenDays.map((field) => row[field]));
  const taken = part.moment === "final" ? lastSeen : surgery.day;
  if (own === null && taken === null) {
    missing(stripped, "lastFollowUpDay", "a day last seen, or a date of its own, for the final body measures");
    return [];
  }
  const bodyDayFrom = own !== null ? "recorded" : part.moment === "final" ? "last-follow-up" : "surgery";
  const occasion = part.moment ?? "other";
  return [
    {
      table: "bodyMeasure",
      number: null,
      row: { ...blankRow("bodyMeasure"), ...values, person: keyed.person, bodyDay: own ?? taken, occasion, bodyDayFrom },
    },
  ];
}

function latest(days: readonly (AnyRow[string] | undefined)[]): number | null {
  const numbers = days.filter((day) => typeof day === "number");
  return numbers.length === 0 ? null : Math.max(...numbers);
}
