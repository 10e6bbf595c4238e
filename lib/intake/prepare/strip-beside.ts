import { type AnyRow, blankRow } from "./blank-row";
import type { Part } from "./draft";
import type { Keyed } from "./keyed-drafts";
import { placed } from "./strip-segment";
import { missing, type StrippedDraft, type StrippedPart } from "./stripped-draft";
import type { Surgery } from "./time-of-surgery";

/** The segment beside which a part of a one-sheet row stands. */
export type Beside = { readonly row: AnyRow; readonly keyed: Keyed; readonly surgery: Surgery };

/** Rows that a one-sheet row's other columns make: body measures, visits, events, scores. */
export function rowsBeside(stripped: StrippedDraft, part: Part, { row, keyed, surgery }: Beside): StrippedPart[] {
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
