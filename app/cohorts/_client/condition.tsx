"use client";

import type { Dispatch } from "react";
import type { DraftCondition, Verb } from "./draft";
import type { Edit } from "./edit";
import type { FieldGroup, OfferedField } from "./offered";
import { Values } from "./values";

type Props = { readonly draft: DraftCondition; readonly groups: readonly FieldGroup[]; readonly dispatch: Dispatch<Edit> };

const verbsOf: Readonly<Record<OfferedField["kind"], readonly (readonly [Verb, string])[]>> = {
  values: [
    ["is", "is"],
    ["recorded", "is recorded"],
    ["not-recorded", "is not recorded"],
  ],
  number: [
    ["between", "is between"],
    ["at-least", "is at least"],
    ["at-most", "is at most"],
    ["recorded", "is recorded"],
    ["not-recorded", "is not recorded"],
  ],
};

/** One sentence: a field, a verb, and what it must be. */
export function Condition({ draft, groups, dispatch }: Props) {
  const field = groups.flatMap(({ fields }) => fields).find(({ id }) => id === draft.field);
  const change = (by: Partial<Omit<DraftCondition, "id" | "kind">>) => dispatch({ edit: "change", id: draft.id, by });
  const chooseField = (id: string) => {
    const next = groups.flatMap(({ fields }) => fields).find((one) => one.id === id);
    change({ field: id, verb: next?.kind === "number" ? "between" : "is", values: [], from: "", to: "" });
  };
  const name = field?.label ?? "new condition";
  return (
    <li className="condition">
      <select aria-label="Field" value={draft.field} onChange={(event) => chooseField(event.target.value)} autoComplete="off">
        <option value="">choose a field…</option>
        {groups.map(({ heading, fields }) => (
          <optgroup key={heading} label={heading}>
            {fields.map(({ id, label }) => (
              <option key={id} value={id}>
                {label}
              </option>
            ))}
          </optgroup>
        ))}
      </select>{" "}
      {field === undefined ? null : (
        <>
          <select
            aria-label={`${name}: how`}
            value={verbShown(draft, field)}
            onChange={(event) => change({ verb: event.target.value as Verb })}
            autoComplete="off"
          >
            {verbsOf[field.kind].map(([verb, text]) => (
              <option key={verb} value={verb}>
                {text}
              </option>
            ))}
            {field.kind === "number" && draft.verb === "is" ? <option value="is">is {draft.values.map(String).join(" or ")}</option> : null}
          </select>{" "}
          <What draft={draft} field={field} change={change} />
        </>
      )}{" "}
      <button type="button" className="quiet" onClick={() => dispatch({ edit: "remove", id: draft.id })} aria-label={`Leave out: ${name}`}>
        leave out
      </button>
    </li>
  );
}

function verbShown({ verb }: DraftCondition, { kind }: OfferedField): Verb {
  return verbsOf[kind].some(([known]) => known === verb) || kind === "number" ? verb : "is";
}

type WhatProps = {
  readonly draft: DraftCondition;
  readonly field: OfferedField;
  readonly change: (by: Partial<Omit<DraftCondition, "id" | "kind">>) => void;
};

function What({ draft, field, change }: WhatProps) {
  const { verb, from, to } = draft;
  if (field.kind === "values") return verb === "is" ? <Values key={field.id} draft={draft} field={field} change={change} /> : null;
  const number = (name: "from" | "to", value: string) => (
    <input
      inputMode="decimal"
      aria-label={`${field.label}, ${name}`}
      value={value}
      size={Math.max(3, value.length)}
      onChange={(event) => change({ [name]: event.target.value })}
      autoComplete="off"
    />
  );
  const unit = field.unit === null ? "" : ` ${field.unit}`;
  if (verb === "between")
    return (
      <>
        {number("from", from)} and {number("to", to)}
        {unit}
      </>
    );
  if (verb === "at-least")
    return (
      <>
        {number("from", from)}
        {unit}
      </>
    );
  return verb === "at-most" ? (
    <>
      {number("to", to)}
      {unit}
    </>
  ) : null;
}
