import { isDay } from "../cells/cell-read";
import { dayNumberOf } from "../strip";
import { type AnyRow, blankRow } from "./blank-row";
import { type Draft, findPart } from "./draft";
import type { Keyed } from "./keyed-drafts";
import { knownSurgery } from "./known-surgery";
import type { SegmentIndex } from "./segment-index";
import { rowsBeside } from "./strip-beside";
import type { StripOptions } from "./strip-options";
import { placed, stripSegment } from "./strip-segment";
import { missing, type StrippedDraft, type StrippedPart, say } from "./stripped-draft";
import { holdsDate, type Surgery, surgeryOf } from "./time-of-surgery";

export type SheetTraits = {
  readonly hasSurgeryDates: boolean;
  readonly hasSurgeryYears: boolean;
  readonly hasEventsLookedFor: boolean;
  /** A column holds times since surgery. */
  readonly hasDurations: boolean;
};

const namesOfSegment = ["bone", "side"] as const;

/** Strips a row of a one-sheet file: a person, a segment, and the body measures, visits, events and scores of its columns. */
export function stripOneSheet(
  draft: Draft,
  keyed: Keyed | null,
  options: StripOptions,
  { index, ...traits }: SheetTraits & { readonly index: SegmentIndex },
): StrippedDraft {
  const stripped: StrippedDraft = { draft, keyed, line: null, parts: [], facts: draft.facts };
  const segment = findPart(draft, "segment");
  if (!keyed) missing(stripped, "localId");
  for (const field of namesOfSegment) if (segment && segment.values[field] === undefined) missing(stripped, field);
  const surgery = keyed ? (surgeryOf(draft, keyed.shiftDays) ?? found(stripped, keyed, { index, traits })) : null;
  if (keyed && !surgery) missing(stripped, "surgeryDay");
  if (!segment || !keyed || !surgery) return stripped;
  if (surgery.line === "undated") checkUndated(stripped, traits);
  stripped.line = surgery.line;
  checkTimes(stripped, surgery, traits, options.todayNumber);
  const { row, facts } = stripSegment(draft, segment, keyed, surgery, options);
  stripped.facts.push(...facts);
  lookedFor(row, draft, traits);
  stripped.parts.push(personPart(draft, keyed, surgery), { table: "segment", row, nth: null });
  const beside = { row, keyed, surgery };
  for (const part of draft.parts) for (const made of rowsBeside(stripped, part, beside)) stripped.parts.push(made);
  return stripped;
}

/** A sheet without a column of surgeries names segments that are known. */
function found(
  stripped: StrippedDraft,
  keyed: Keyed,
  { index, traits }: { readonly index: SegmentIndex; readonly traits: SheetTraits },
): Surgery | null {
  if (namesSurgeries(traits)) return null;
  const known = knownSurgery(stripped.draft, keyed, index);
  if (!known) say(stripped, { code: "which-segment", found: "no such segment known, or several", field: "surgeryDay" });
  return known;
}

export function namesSurgeries({ hasSurgeryDates, hasSurgeryYears }: Pick<SheetTraits, "hasSurgeryDates" | "hasSurgeryYears">): boolean {
  return hasSurgeryDates || hasSurgeryYears;
}

function checkUndated(stripped: StrippedDraft, { hasSurgeryDates }: SheetTraits): void {
  const dated = stripped.draft.parts.some(holdsDate);
  if (dated) missing(stripped, "surgeryDay", "a surgery date: the row has other dates, which can’t be placed without it");
  else if (hasSurgeryDates) say(stripped, { code: "no-surgery-date", found: "a year without a date", field: "surgeryDay" });
}

function personPart(draft: Draft, keyed: Keyed, surgery: Surgery): StrippedPart {
  const part = findPart(draft, "person");
  const row = blankRow("person");
  if (part) placed(part, surgery.day, keyed, row);
  row.person = keyed.person;
  row.unit = keyed.unit;
  row.line = surgery.line;
  return { table: "person", nth: null, row };
}

/** Times since surgery that reach beyond today. */
function checkTimes(stripped: StrippedDraft, surgery: Surgery, { hasDurations }: SheetTraits, todayNumber: number): void {
  if (surgery.line !== "dated" || !hasDurations) return;
  const left = todayNumber - dayNumberOf(surgery.date);
  for (const { values, moment, number } of stripped.draft.parts) {
    for (const field in values) {
      const value = values[field];
      if (!isDay(value) || !("after" in value) || value.after <= left) continue;
      const id = moment === null && number === null ? field : `${field}.${moment ?? number}`;
      say(stripped, { code: "date-in-future", found: "a time since surgery that ends after today", field: id });
    }
  }
}

/** An event, or the word that there was none, says that events were looked for where the file has no column for that. */
function lookedFor(row: AnyRow, draft: Draft, { hasEventsLookedFor }: SheetTraits): void {
  const hasEvent = draft.parts.some(({ table, values }) => table === "event" && values.eventType !== undefined);
  if (!hasEventsLookedFor && (hasEvent || draft.noEvents)) row.eventsLookedFor = "fully";
}
