import type { AnswerOf } from "./answers";
import type { AnyRow } from "./blank-row";
import { type HeldIndex, limbKey } from "./held-index";
import { rowKey } from "./row-key";
import { partIn, type StrippedDraft, say } from "./stripped-draft";

const nearDays = 30;

/**
 * What a row says against what is held: a line of the other kind (error), another sex (warn), a surgery within 30 days of one held (ask).
 * Answered `same`, the row and all beside it take the surgery held: its date was corrected.
 */
export function meetHeld(draft: StrippedDraft, held: HeldIndex, answerOf: AnswerOf): void {
  meetPerson(draft, held);
  const segment = partIn(draft, "segment");
  if (!segment || draft.line !== "dated" || held.rows.segment.has(rowKey("segment", segment))) return;
  const day = Number(segment.surgeryDay);
  const near = (held.surgeries.get(limbKey(segment)) ?? []).find((other) => Math.abs(other - day) <= nearDays);
  if (near === undefined) return;
  const answer = answerOf("near-duplicate", draft.draft);
  if (answer === "same") takeSurgery(draft, segment, near);
  else if (answer === null) {
    const days = Math.abs(near - day);
    say(draft, { code: "near-duplicate", field: "surgeryDay", found: `a surgery ${days} days from one held`, about: { days } });
  }
}

function meetPerson(draft: StrippedDraft, held: HeldIndex): void {
  const person = partIn(draft, "person");
  const known = person && held.rows.person.get(rowKey("person", person));
  if (!person || !known) return;
  if (draft.line !== null && known.line !== draft.line) {
    say(draft, { code: "line-differs", field: "surgeryDay", found: `a row of a person whose days are held as ${known.line}` });
  }
  if (person.sex !== null && known.sex !== null && person.sex !== known.sex) {
    say(draft, { code: "sex-changed", field: "sex", found: "a sex unlike the one held" });
  }
}

function takeSurgery(draft: StrippedDraft, segment: AnyRow, surgeryDay: number): void {
  const before = segment.surgeryDay;
  for (const { row } of draft.parts) if (row.surgeryDay === before) row.surgeryDay = surgeryDay;
}

/** Notes what a row brings: nothing new, or which fields it changes. */
export function noteNews(draft: StrippedDraft, held: HeldIndex): void {
  const changes = draft.parts.map(({ table, row }) => changeOf(row, held.rows[table].get(rowKey(table, row))));
  if (changes.every((change) => change === "as-held")) say(draft, { code: "already-held", field: null, found: "a row held as it is" });
  const fields = [...new Set(changes.flatMap((change) => (Array.isArray(change) ? change : [])))];
  if (fields.length > 0)
    say(draft, {
      code: "changed-since-last",
      field: fields[0] ?? null,
      found: "values unlike those held",
      about: { fields: fields.join(", ") },
    });
}

/** The fields in which a row changes the one held; a blank never clears. */
export function changeOf(row: AnyRow, known: AnyRow | undefined): "new" | "as-held" | readonly string[] {
  if (!known) return "new";
  const fields = Object.keys(row).filter((field) => row[field] !== null && row[field] !== known[field]);
  return fields.length === 0 ? "as-held" : fields;
}
