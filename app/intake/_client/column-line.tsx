"use client";

import { useState } from "react";
import type { Mapping, SheetKind } from "@/lib/intake";
import type { ColumnShown } from "../_talk/view";
import { Choose } from "./choose";
import { sayColumn, sayMapping } from "./doings";
import { fieldOptions, labelOfField } from "./field-options";
import type { IntakeStore } from "./store";
import { dropWords, holdsWords, howWords, neverMapped } from "./words";

type Props = { readonly store: IntakeStore; readonly column: ColumnShown; readonly kind: SheetKind };

/** A column: its header and three cells, the field it fills and its unit, and the ways to say otherwise. */
export function ColumnLine({ store, column, kind }: Props) {
  const [changing, setChanging] = useState(false);
  const { header, field, how, why, holds, samples } = column;
  const said = Object.hasOwn(store.state.said.mapping.columns, header);
  const say = (to: string | null | undefined) => {
    setChanging(false);
    sayColumn(store, header, to);
  };
  return (
    <li className="column sans">
      <p className="header">
        <strong>{header}</strong>
        {samples.length === 0 ? null : <span className="muted small samples">{samples.join(" · ")}</span>}
      </p>
      <p className="meaning">
        {field === null ? (
          <span className="muted">left out: {why === null ? "" : `${dropWords[why]}${holdsWords(holds)}`}</span>
        ) : (
          labelOfField(field)
        )}
        {field === null ? null : <span className="muted small"> {howWords[how ?? "alias"]}</span>}
        <UnitWord store={store} column={column} />
      </p>
      {changing ? (
        <Choose
          label={`What is in “${header}”?`}
          options={fieldOptions(kind).filter(({ id }) => why !== "national-number" || id === "localId")}
          onChoose={say}
          onLeave={() => setChanging(false)}
          takesFocus
          hint="Type a word of the field; arrow keys and Enter choose, Escape leaves it as it is."
        />
      ) : null}
      <ColumnDoings column={column} changing={changing} said={said} change={setChanging} say={say} />
    </li>
  );
}

type DoingsProps = {
  readonly column: ColumnShown;
  readonly changing: boolean;
  readonly said: boolean;
  readonly change: (changing: boolean) => void;
  readonly say: (to: null | undefined) => void;
};

function ColumnDoings({ column: { header, field, why }, changing, said, change, say }: DoingsProps) {
  const of = <span className="only-heard"> {header}</span>;
  if (changing)
    return (
      <p className="doings not-printed">
        <button type="button" className="as-link" onClick={() => change(false)}>
          Leave it as it is
        </button>
      </p>
    );
  return (
    <p className="doings not-printed">
      {why !== null && neverMapped.has(why) ? null : (
        <button type="button" className="as-link" onClick={() => change(true)}>
          {field === null ? "Say what it is" : "Change"}
          {of}
        </button>
      )}
      {field === null ? null : (
        <button type="button" className="as-link" onClick={() => say(null)}>
          Leave out{of}
        </button>
      )}
      {said ? (
        <button type="button" className="as-link" onClick={() => say(undefined)}>
          As its header says{of}
        </button>
      ) : null}
    </p>
  );
}

function UnitWord({ store, column: { header, unit, units } }: Omit<Props, "kind">) {
  if (units.length === 0) return unit === null ? null : <span className="unit">{unit}</span>;
  const change = (value: string) =>
    sayMapping(store, { units: { ...store.state.said.mapping.units, [header]: value as Mapping["units"][string] } });
  return (
    <label className="unit">
      <span className="only-heard">Unit of {header}</span>
      <select value={unit ?? ""} onChange={(event) => change(event.target.value)} autoComplete="off">
        {unit === null ? <option value="">unit?</option> : null}
        {units.map((one) => (
          <option key={one}>{one}</option>
        ))}
      </select>
    </label>
  );
}
