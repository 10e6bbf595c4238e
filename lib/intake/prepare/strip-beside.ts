import { type AnyRow, blankRow } from "./blank-row";
import type { Part, Values } from "./draft";
import type { Keyed } from "./keyed-drafts";
import { placed } from "./strip-segment";
import { missing, type StrippedDraft, type StrippedPart } from "./stripped-draft";
import type { Surgery } from "./time-of-surgery";

/** The segment beside which a part of a one-sheet row stands. */
export type Beside = { readonly row: AnyRow; readonly keyed: Keyed; readonly surgery: Surgery };

/** Rows that a one-sheet row's other columns make: body measures, visits, events, scores. */
export function rowsBeside(stripped: StrippedDraft, part: Part, beside: Beside): StrippedPart[] {
  switch (part.table) {
    case "segment":
    case "person":
      return [];
    case "bodyMeasure":
      return bodyMeasure(stripped, part, beside);
    case "visit":
      return made(stripped, part, beside, ["visitDay"]);
    case "event": {
      const event = made(stripped, part, beside, ["eventType"]);
      for (const { row } of event) row.consequenceOf = consequenceOf(stripped, part);
      return event;
    }
    case "score":
      return made(stripped, part, beside, ["scoreCode", "scoreDay", "scoreValue"]);
  }
}

/** The row that a part's columns make, where they hold what it needs. */
function made(stripped: StrippedDraft, part: Part, { row, keyed, surgery }: Beside, required: readonly string[]): StrippedPart[] {
  if (!wanted(stripped, part, required)) return [];
  const own = placed(part, surgery.day, keyed, blankRow(part.table));
  own.person = keyed.person;
  if (part.table !== "score") {
    own.bone = row.bone ?? null;
    own.side = row.side ?? null;
    own.surgeryDay = surgery.day;
  }
  return [{ table: part.table, row: own, nth: part.number }];
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
  if (isBlank(values)) return false;
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
function bodyMeasure(stripped: StrippedDraft, part: Part, { row: segment, keyed, surgery }: Beside): StrippedPart[] {
  const { bodyDay, ...measures } = part.values;
  if (isBlank(measures)) return [];
  const row = placed(part, surgery.day, keyed, blankRow("bodyMeasure"));
  const own = row.bodyDay ?? null;
  const lastSeen = segment.lastFollowUpDay ?? latest(seenDays.map((field) => segment[field]));
  const taken = part.moment === "final" ? lastSeen : surgery.day;
  if (own === null && taken === null) {
    missing(stripped, "lastFollowUpDay", "a day last seen, or a date of its own, for the final body measures");
    return [];
  }
  row.person = keyed.person;
  row.bodyDay = own ?? taken;
  row.occasion = part.moment ?? "other";
  row.bodyDayFrom = own !== null ? "recorded" : part.moment === "final" ? "last-follow-up" : "surgery";
  return [{ table: "bodyMeasure", nth: part.moment, row }];
}

function isBlank(values: Readonly<Values>): boolean {
  for (const field in values) if (values[field] !== undefined) return false;
  return true;
}

function latest(days: readonly (AnyRow[string] | undefined)[]): number | null {
  const numbers = days.filter((day) => typeof day === "number");
  return numbers.length === 0 ? null : Math.max(...numbers);
}
