"use client";

import { type FormEvent, useId, useState } from "react";
import type { WhoseAsked } from "../_whose/talk";

type Props = {
  readonly ask: (asked: WhoseAsked) => void;
  readonly forget: () => void;
  readonly busy: boolean;
  readonly units: readonly string[];
};

/** Numbers to type, or a list to drop, and the unit whose numbers they are where there are several. */
export function WhoseNumbers({ ask, forget, busy, units }: Props) {
  const id = useId();
  const [typed, setTyped] = useState("");
  const [unit, setUnit] = useState(units[0] ?? "unit-1");
  const submit = (event: FormEvent) => {
    event.preventDefault();
    ask({ find: { unit, typed, file: null } });
  };
  const drop = (file: File | undefined) => {
    if (file) ask({ find: { unit, typed: "", file } });
  };
  return (
    <form onSubmit={submit} className="whose-form sans" noValidate>
      <label htmlFor={`${id}-numbers`}>Local numbers, a line each</label>
      <textarea
        id={`${id}-numbers`}
        rows={3}
        spellCheck={false}
        autoComplete="off"
        value={typed}
        onChange={(event) => setTyped(event.target.value)}
      />
      {units.length < 2 ? null : (
        <label>
          Numbers of{" "}
          <select value={unit} onChange={(event) => setUnit(event.target.value)}>
            {units.map((one) => (
              <option key={one}>{one}</option>
            ))}
          </select>
        </label>
      )}
      <p className="doings">
        <button type="submit" disabled={busy || typed.trim() === ""}>
          {busy ? "Looking" : "Look them up"}
        </button>
        <button type="button" className="as-link" onClick={forget}>
          Shut the key and forget them
        </button>
      </p>
      <label
        className="drop"
        htmlFor={`${id}-file`}
        onDragOver={(event) => event.preventDefault()}
        onDrop={(event) => {
          event.preventDefault();
          drop(event.dataTransfer.files[0]);
        }}
      >
        Or drop the unit’s own list: a workbook (.xlsx), .csv or text
        <input id={`${id}-file`} type="file" accept=".xlsx,.csv,.txt,.tsv" onChange={(event) => drop(event.target.files?.[0])} />
      </label>
    </form>
  );
}
