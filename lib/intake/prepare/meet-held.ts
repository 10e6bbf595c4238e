import type { AnswerOf } from "./answers";
import type { AnyRow } from "./blank-row";
import { changedFields } from "./changed-fields";
import { type HeldIndex, limbKey } from "./held-index";
import { partIn, type StrippedDraft, say } from "./stripped-draft";

/** What a row says of its person against what is held: a line of the other kind (error), another sex (warn). */
export function meetHeldPerson(draft: StrippedDraft, held: HeldIndex): void {
  const person = partIn(draft, "person");
  const known = person && held.find("person", person);
  if (!person || !known) return;
  if (draft.line !== null && known.line !== draft.line) {
    say(draft, { code: "line-differs", field: "surgeryDay", found: `a row of a person whose days are held as ${known.line}` });
  }
  if (person.sex !== null && (known.sex ?? null) !== null && person.sex !== known.sex) {
    say(draft, { code: "sex-changed", field: "sex", found: "a sex unlike the one held" });
  }
}

const nearDays = 30;
type Known = { readonly day: number; readonly row: number | null };

/**
 * Asks about a surgery within 30 days of one held, or of one in a row above, on the same bone: the same operation whose date was corrected,
 * or a new one. Answered `same`, the row and all beside it take the day of the other.
 */
export function nearDuplicates(held: HeldIndex | null, answerOf: AnswerOf): (draft: StrippedDraft) => void {
  const above = new Map<string, Known[]>();
  return (draft) => {
    const segment = partIn(draft, "segment");
    if (!segment || draft.line !== "dated") return;
    const day = Number(segment.surgeryDay);
    const limb = limbKey(segment);
    const seen = above.get(limb) ?? [];
    above.set(limb, seen);
    const near = nearest(day, held?.surgeriesOf(segment) ?? [], seen);
    const answer = near ? answerOf("near-duplicate", draft.draft) : null;
    if (near && answer === "same") takeSurgery(draft, segment, near.day);
    else if (near && answer === null) sayNear(draft, Math.abs(near.day - day), near.row);
    seen.push({ day: Number(segment.surgeryDay), row: draft.draft.row });
  };
}

/** The first surgery within 30 days, those held first; none where the day itself is known. */
function nearest(day: number, heldDays: readonly number[], seen: readonly Known[]): Known | undefined {
  if (heldDays.includes(day) || seen.some((other) => other.day === day)) return undefined;
  const held = heldDays.find((other) => Math.abs(other - day) <= nearDays);
  return held === undefined ? seen.find((other) => Math.abs(other.day - day) <= nearDays) : { day: held, row: null };
}

function sayNear(draft: StrippedDraft, days: number, other: number | null): void {
  const from = other === null ? "one held" : `that of row ${other}`;
  say(draft, {
    code: "near-duplicate",
    field: "surgeryDay",
    found: `a surgery ${days} days from ${from}`,
    about: { days, other: other ?? 0 },
  });
}

function takeSurgery(draft: StrippedDraft, segment: AnyRow, surgeryDay: number): void {
  const before = segment.surgeryDay;
  for (const { row } of draft.parts) if (row.surgeryDay === before) row.surgeryDay = surgeryDay;
}

/** Notes what a row brings: nothing new, or which fields it changes. */
export function noteNews(draft: StrippedDraft, held: HeldIndex): void {
  const changes = draft.parts.map(({ table, row }) => ({ isNew: !held.find(table, row), fields: changedFields(table, row, held) }));
  const fields = [...new Set(changes.flatMap((change) => change.fields.map(({ field }) => field)))];
  if (fields.length === 0 && changes.every(({ isNew }) => !isNew)) {
    say(draft, { code: "already-held", field: null, found: "a row held as it is" });
  }
  if (fields.length > 0)
    say(draft, {
      code: "changed-since-last",
      field: fields[0] ?? null,
      found: "values unlike those held",
      about: { fields: fields.join(", ") },
    });
}
