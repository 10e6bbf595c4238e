"use client";

import { useRef } from "react";
import { counted } from "@/lib/charts";
import type { SheetShown, View } from "../_talk/view";
import { ColumnLine } from "./column-line";
import { ColumnQuestion } from "./column-question";
import { GoOn } from "./go-on";
import { MappingDoings } from "./mapping-doings";
import { NotYet } from "./not-yet";
import type { PartProps } from "./part-props";
import { SaidOfTheFile } from "./said-of-the-file";
import type { IntakeStore } from "./store";

/** What we understood: questions first, then each column with the field it fills, then those left out. */
export function UnderstoodPart({ store, state, goTo }: PartProps) {
  const { view } = state;
  if (view === null) return <NotYet store={store} state={state} />;
  const open = view.questions.filter(({ settledBy }) => settledBy !== "answers").length;
  return (
    <>
      <Questions store={store} view={view} />
      <SaidOfTheFile store={store} view={view} />
      {view.sheets.map((sheet) => (
        <Columns key={sheet.file} store={store} sheet={sheet} many={view.sheets.length > 1} />
      ))}
      <MappingDoings store={store} />
      <GoOn
        from="understood"
        state={state}
        goTo={goTo}
        waits={view.stage === "columns" ? `${counted(open, "question")} must be answered first.` : null}
      />
    </>
  );
}

function Questions({ store, view }: { readonly store: IntakeStore; readonly view: View }) {
  const heading = useRef<HTMLHeadingElement>(null);
  const asked = view.questions.filter(({ settledBy }) => settledBy !== "answers");
  return (
    <section aria-labelledby="column-questions">
      <h3 id="column-questions" ref={heading} tabIndex={-1}>
        {asked.length === 0
          ? "Nothing is open about the columns."
          : `${counted(asked.length, "question")} that the file can’t answer itself`}
      </h3>
      <ol className="plain">
        {asked.map((one) => (
          <ColumnQuestion
            key={`${one.file} ${one.code} ${one.column} ${one.spelling?.text ?? ""}`}
            store={store}
            asked={one}
            answered={() => heading.current?.focus()}
          />
        ))}
      </ol>
    </section>
  );
}

type ColumnsProps = { readonly store: IntakeStore; readonly sheet: SheetShown; readonly many: boolean };

function Columns({ store, sheet, many }: ColumnsProps) {
  const kept = sheet.columns.filter(({ field }) => field !== null);
  const out = sheet.columns.filter(({ field }) => field === null);
  const line = (column: SheetShown["columns"][number]) => (
    <ColumnLine key={column.header} store={store} column={column} kind={sheet.kind} />
  );
  return (
    <section aria-label={`Columns of ${sheet.file}`}>
      <h3>
        {counted(kept.length, "column")} that mean a field{many ? ` in ${sheet.file}` : ""}
      </h3>
      <ul className="columns">{kept.map(line)}</ul>
      <h3>{counted(out.length, "column")} left out</h3>
      <ul className="columns">{out.map(line)}</ul>
    </section>
  );
}
