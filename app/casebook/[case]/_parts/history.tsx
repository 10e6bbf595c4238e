import type { CaseBatch, FieldChange, RowChange } from "@/lib/answers";
import { counted, listed } from "@/lib/charts";
import { timeText } from "../../../_page/time";
import { codeWords, sentence, valueWords } from "../../_words";
import { reasonWords } from "./correct-form";

/** Which batch changed which field of the case, from what to what; the newest first. */
export function History({ history }: { readonly history: readonly CaseBatch[] }) {
  return (
    <section aria-labelledby="history">
      <h2 id="history">How it came to be</h2>
      <ol className="plain history">{history.toReversed().map(batchItem)}</ol>
    </section>
  );
}

function batchItem({ batch, kind, at, undoes, reason, joined, changes }: CaseBatch) {
  const told = changes.filter(({ what, fields }) => what === "changed" || (what === "back" && fields.length > 0));
  return (
    <li key={batch} className="batch">
      <p className="sans">
        <strong>Batch {batch}</strong>, {timeText(at)}, {undoes === null ? kindWords(kind) : `took batch ${undoes} back`}
        {reason === null ? "" : ` (${reasonWords[reason]})`}:{" "}
        {[joinedWords(joined), gist(changes)].filter((text) => text !== "").join("; ")}.
      </p>
      {told.length === 0 ? null : <ul className="changes sans">{told.map(changeItem)}</ul>}
    </li>
  );
}

const kindWords = (kind: CaseBatch["kind"]) => (kind === "intake" ? "brought in" : kind === "correction" ? "corrected by hand" : kind);
const joinedWords = (numbers: readonly number[]) =>
  numbers.length === 0
    ? ""
    : `case ${listed(numbers.map(String))} joined to this one, as ${numbers.length === 1 ? "another number" : "other numbers"} of the patient`;

const nouns: Readonly<Record<RowChange["table"], string>> = {
  person: "patient",
  bodyMeasure: "body measure",
  segment: "segment",
  visit: "visit",
  event: "event",
  score: "score",
};
const verbs: Readonly<Record<RowChange["what"], string>> = { new: "new", changed: "changed", gone: "taken away", back: "brought back" };

/** `2 segments and 14 visits new; 1 segment changed`. */
function gist(changes: readonly RowChange[]): string {
  const parts = (["new", "changed", "gone", "back"] as const).flatMap((what) => {
    const own = changes.filter((change) => change.what === what);
    if (own.length === 0) return [];
    const tables = [...new Set(own.map(({ table }) => table))];
    return [`${listed(tables.map((table) => counted(own.filter((one) => one.table === table).length, nouns[table])))} ${verbs[what]}`];
  });
  return parts.join("; ");
}

function changeItem(change: RowChange) {
  return (
    <li key={`${change.table}-${change.entity}`}>
      {sentence(rowName(change))}: {change.fields.map(fieldWords).join("; ")}
    </li>
  );
}

function rowName({ table, of: { bone, side, day, type } }: RowChange): string {
  const segment = bone === null ? "" : `${side} ${codeWords(bone)}`;
  if (table === "segment") return segment;
  if (table === "person") return "patient";
  const name = type === null ? nouns[table] : codeWords(type);
  return [name, day === null ? "" : `of day ${day}`, segment === "" ? "" : `(${segment})`].filter((part) => part !== "").join(" ");
}

function fieldWords({ label, before, after, ...shown }: FieldChange): string {
  return `${label.toLowerCase()} from ${valueWords(shown, before)} to ${valueWords(shown, after)}`;
}
