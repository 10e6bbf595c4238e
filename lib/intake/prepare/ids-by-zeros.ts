import { normaliseLocalId } from "../key";
import type { AnswerOf } from "./answers";
import type { Draft } from "./draft";

/**
 * Local numbers of a file that differ by leading zeros only: a spreadsheet takes them off. Asked about at each row with fewer zeros; answered
 * `same`, the row takes the longer number, which is the one that can't have been made by a spreadsheet.
 */
export function settleZeros(drafts: readonly Draft[], answerOf: AnswerOf): void {
  const groups = new Map<string, Map<string, Draft[]>>();
  for (const draft of drafts) {
    const id = normaliseLocalId(draft.localId);
    if (!/\d/.test(id)) continue;
    const key = `${draft.unit ?? ""}\u001f${id.replace(/^0+/, "")}`;
    const forms = groups.get(key) ?? new Map<string, Draft[]>();
    groups.set(key, forms);
    const same = forms.get(id);
    if (same) same.push(draft);
    else forms.set(id, [draft]);
  }
  for (const forms of groups.values()) if (forms.size > 1) settle(forms, answerOf);
}

function settle(forms: ReadonlyMap<string, readonly Draft[]>, answerOf: AnswerOf): void {
  const byLength = [...forms].sort(([a], [b]) => b.length - a.length);
  const [longest, ...shorter] = byLength;
  const other = longest?.[1][0];
  if (!other) return;
  for (const draft of shorter.flatMap(([, drafts]) => drafts)) {
    const answer = answerOf("ids-differ-by-zeros", draft);
    if (answer === "same") draft.localId = other.localId;
    else if (answer === null) {
      draft.facts.push({
        code: "ids-differ-by-zeros",
        column: null,
        field: "localId",
        found: "a number that differs by leading zeros",
        about: { other: other.row },
      });
    }
  }
}
