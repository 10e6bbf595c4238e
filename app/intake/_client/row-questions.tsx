"use client";

import { useRef } from "react";
import { counted } from "@/lib/charts";
import { labelOfCode } from "@/lib/codebook";
import type { Asked, View } from "../_talk/view";
import { sayMapping } from "./doings";
import type { IntakeStore } from "./store";
import { answerWords, severityWords } from "./words";

/** Questions that rows raise, answered once for all of them or row by row; and the answers given, which can be taken back. */
export function RowQuestions({ store, view }: { readonly store: IntakeStore; readonly view: View }) {
  const heading = useRef<HTMLHeadingElement>(null);
  const asked = view.questions.filter(({ settledBy }) => settledBy === "answers");
  const answers = Object.entries(store.state.said.mapping.answers);
  if (asked.length === 0 && answers.length === 0 && store.state.said.rowAnswers.length === 0) return null;
  return (
    <section aria-labelledby="asked-rows">
      <h3 id="asked-rows" ref={heading} tabIndex={-1}>
        {asked.length === 0 ? "Every question is answered." : severityWords.ask.head}
      </h3>
      <ol className="plain">
        {asked.map((one) => (
          <RowQuestion key={`${one.file} ${one.code} ${one.column}`} store={store} asked={one} answered={() => heading.current?.focus()} />
        ))}
      </ol>
      <Answered store={store} answers={answers} />
    </section>
  );
}

type QuestionProps = { readonly store: IntakeStore; readonly asked: Asked; readonly answered: () => void };

function RowQuestion({ store, asked, answered }: QuestionProps) {
  const { code, finding, choices, rows, firstRows, column, file } = asked;
  const forAll = (answer: string) => {
    sayMapping(store, { answers: { ...store.state.said.mapping.answers, [code]: answer } });
    answered();
  };
  const forOne = (row: number, answer: string) => {
    store.say({ rowAnswers: [...store.state.said.rowAnswers, { file, row, code, answer }] });
    answered();
  };
  const wholeFile = code === "blank-consolidation";
  return (
    <li className="asked">
      <h4>
        {labelOfCode(code)}
        {column === null ? "" : ` in ${column}`} <span className="muted number">({counted(rows, "row")})</span>
      </h4>
      <p className="sans">
        Found {finding.found}; expected {finding.expected}. {finding.mend}
      </p>
      <Choices label={wholeFile ? "For the file" : "For all of them"} choices={choices} choose={forAll} />
      {wholeFile ? null : (
        <details>
          <summary>Row by row</summary>
          <ul className="plain">
            {firstRows.map((row) => (
              <li key={row}>
                <Choices label={`Row ${row}`} choices={choices} choose={(answer) => forOne(row, answer)} />
              </li>
            ))}
          </ul>
          {rows > firstRows.length ? <p className="sans muted">{rows - firstRows.length} more come up as these are answered.</p> : null}
        </details>
      )}
    </li>
  );
}

type ChoicesProps = { readonly label: string; readonly choices: readonly string[]; readonly choose: (answer: string) => void };

function Choices({ label, choices, choose }: ChoicesProps) {
  return (
    <fieldset className="doings sans" aria-label={label}>
      <span className="number">{label}:</span>
      {choices.map((choice) => (
        <button key={choice} type="button" onClick={() => choose(choice)}>
          {answerWords[choice] ?? labelOfCode(choice)}
        </button>
      ))}
    </fieldset>
  );
}

function Answered({ store, answers }: { readonly store: IntakeStore; readonly answers: readonly (readonly [string, string])[] }) {
  const { rowAnswers, mapping } = store.state.said;
  if (answers.length === 0 && rowAnswers.length === 0) return null;
  const takeBack = (code: string) => {
    const { [code]: _, ...others } = mapping.answers;
    sayMapping(store, { answers: others });
  };
  return (
    <ul className="plain sans">
      {answers.map(([code, answer]) => (
        <li key={code}>
          {labelOfCode(code)}: {(answerWords[answer] ?? labelOfCode(answer)).toLowerCase()}, for all rows.{" "}
          <button type="button" className="as-link" onClick={() => takeBack(code)}>
            Ask again<span className="only-heard"> about {labelOfCode(code).toLowerCase()}</span>
          </button>
        </li>
      ))}
      {rowAnswers.length === 0 ? null : (
        <li>
          {counted(rowAnswers.length, "row")} answered singly.{" "}
          <button type="button" className="as-link" onClick={() => store.say({ rowAnswers: [] })}>
            Ask again about these
          </button>
        </li>
      )}
    </ul>
  );
}
