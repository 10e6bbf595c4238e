"use client";

import { useState } from "react";
import { counted } from "@/lib/charts";
import type { Severity } from "@/lib/codebook";
import type { View } from "../_talk/view";
import { FindingGroup } from "./finding-group";
import { GoOn } from "./go-on";
import { NotYet } from "./not-yet";
import type { PartProps } from "./part-props";
import { RefusedRows } from "./refused-rows";
import { RowQuestions } from "./row-questions";
import { saveBlob } from "./save-blob";
import type { IntakeStore } from "./store";
import { severityWords } from "./words";

const severities: readonly Severity[] = ["error", "warn", "note"];

/** What needs the person's word: questions first, then findings by what they cost, by kind or by row. */
export function FindingsPart({ store, state, goTo }: PartProps) {
  const { view } = state;
  const [by, setBy] = useState<"kind" | "row">("kind");
  if (view === null) return <NotYet store={store} state={state} />;
  const open = view.questions.length;
  const ofColumns = view.questions.filter(({ settledBy }) => settledBy !== "answers").length;
  return (
    <>
      <p className="answer">{findingsWords(view)}</p>
      {ofColumns === 0 ? null : (
        <p className="said warm sans">
          {counted(ofColumns, "question")} about the columns {ofColumns === 1 ? "is" : "are"} open.{" "}
          <button type="button" className="as-link" onClick={() => goTo("understood")}>
            Answer {ofColumns === 1 ? "it" : "them"} under what we understood
          </button>
        </p>
      )}
      <RowQuestions store={store} view={view} />
      <fieldset className="doings sans not-printed" aria-label="Findings by">
        <button type="button" aria-pressed={by === "kind"} onClick={() => setBy("kind")}>
          By kind
        </button>
        <button type="button" aria-pressed={by === "row"} onClick={() => setBy("row")}>
          By row
        </button>
        {view.counts.rowsRefused > 0 ? <SaveRefused store={store} rows={view.counts.rowsRefused} /> : null}
      </fieldset>
      {by === "row" ? (
        <RefusedRows store={store} view={view} />
      ) : (
        severities.map((severity) => <Groups key={severity} store={store} view={view} severity={severity} />)
      )}
      <GoOn from="findings" state={state} goTo={goTo} waits={open > 0 ? `${counted(open, "question")} must be answered first.` : null} />
    </>
  );
}

function findingsWords({ counts, findingsBy, questions }: View): string {
  const refused =
    counts.rowsRefused === 0 ? "Every row stands" : `${counted(counts.rowsRefused, "row")} of ${counts.rowsRead} set aside until mended`;
  const ask = questions.length === 0 ? "no question is open" : `${counted(questions.length, "question")} to answer`;
  return `${refused}; ${ask}; ${findingsBy.warn === 0 ? "nothing" : counted(findingsBy.warn, "thing")} worth a look.`;
}

type GroupsProps = { readonly store: IntakeStore; readonly view: View; readonly severity: Severity };

function Groups({ store, view, severity }: GroupsProps) {
  const groups = view.groups.filter((group) => group.severity === severity);
  if (groups.length === 0) return null;
  const { head, about } = severityWords[severity];
  const list = (
    <>
      <p className="muted">{about}</p>
      <ul className="plain groups">
        {groups.map((group) => (
          <FindingGroup key={group.key} store={store} group={group} many={view.sheets.length > 1} />
        ))}
      </ul>
    </>
  );
  if (severity !== "note")
    return (
      <section aria-labelledby={`severity-${severity}`}>
        <h3 id={`severity-${severity}`}>{head}</h3>
        {list}
      </section>
    );
  return (
    <details>
      <summary>
        {head} ({groups.length})
      </summary>
      {list}
    </details>
  );
}

function SaveRefused({ store, rows }: { readonly store: IntakeStore; readonly rows: number }) {
  const save = async () => {
    const blob = await store.quietly("refusedCsv", {});
    if (blob) saveBlob(blob, "rows-set-aside-HOLDS-IDENTIFIERS.csv");
  };
  return (
    <>
      <button type="button" onClick={() => void save()}>
        Save the {counted(rows, "row")} set aside, with reasons
      </button>
      <span className="muted small">Made in this tab. It holds names and numbers, as your sheet does: keep it where that is kept.</span>
    </>
  );
}
