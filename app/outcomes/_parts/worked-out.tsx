import type { HealingAnswer } from "@/lib/answers";
import { daysPerMonth, reasonsText } from "@/lib/charts";
import { describeWhere } from "@/lib/cohorts";
import { Command } from "../../_page/command";
import { noBreak } from "../../_page/no-break";
import { commandFor } from "../_choices";
import type { OutcomesQuestion } from "../_question";

type Props = { readonly answer: HealingAnswer; readonly question: OutcomesQuestion };

/** Definition, exclusions, method, notes and result reference: all that one needs to ask the same again. */
export function WorkedOut({ answer, question }: Props) {
  const leftOut = answer.groups.flatMap((group) => {
    const text = reasonsText(group);
    return text === "" ? [] : [{ label: group.label, text }];
  });
  return (
    <details className="worked-out">
      <summary>How this was worked out</summary>
      <dl>
        <dt>Definition</dt>
        <dd>{sentence(answer.definition.sentence)}</dd>
        <dt>Cohort</dt>
        <dd>{sentence(describeWhere(question.where))}</dd>
        <dt>Left out, and why</dt>
        {leftOut.length === 0 ? <dd>No segment.</dd> : leftOut.map(({ label, text }) => <dd key={label}>{`${label}: ${text}.`}</dd>)}
        <dt>Method</dt>
        <dd>{noBreak(sentence(answer.method))}</dd>
        {question.unit === "months/cm" ? <dd>A month is {daysPerMonth} days (365.25/12).</dd> : null}
        <Notes answer={answer} />
        <dt>Result reference</dt>
        <dd>
          <code>{answer.stamp}</code>, batch {answer.batch}
          {answer.dataTo === null ? "" : `, data to ${answer.dataTo}`}. The same numbers come again with{" "}
          <Command text={`npm run -s lengthbook -- result ${answer.stamp}`} />
        </dd>
        <dt>At the command line</dt>
        <dd>
          <Command text={commandFor(question)} />
        </dd>
      </dl>
    </details>
  );
}

function Notes({ answer }: { readonly answer: HealingAnswer }) {
  const notes = notesOf(answer);
  if (notes.length === 0) return null;
  return (
    <>
      <dt>Notes</dt>
      {notes.map((note) => (
        <dd key={note}>{note}</dd>
      ))}
    </>
  );
}

/** Each note once; where some groups bear it and others don't, their names stand before it. */
function notesOf(answer: HealingAnswer): readonly string[] {
  const bearers = new Map<string, Set<string>>();
  for (const group of answer.groups)
    for (const { text } of [...group.notes, ...group.median.notes]) bearers.set(text, new Set([...(bearers.get(text) ?? []), group.label]));
  const ofGroups = [...bearers].map(([text, labels]) =>
    labels.size === answer.groups.length ? text : `${[...labels].join(", ")}: ${text}`,
  );
  return [...answer.notes.map(({ text }) => text), ...ofGroups];
}

/** `days from …` → `Days from … .` */
function sentence(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}
