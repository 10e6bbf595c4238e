"use client";

import { useEffect, useRef } from "react";
import type { DraftCondition } from "./draft";
import type { OfferedField, PlainValue } from "./offered";

type Props = {
  readonly draft: DraftCondition;
  readonly field: OfferedField;
  readonly change: (by: Partial<Omit<DraftCondition, "id" | "kind">>) => void;
};

/** What a field may be, as ticks that open beneath their words. */
export function Values({ draft, field, change }: Props) {
  const ticked = (value: PlainValue) => draft.values.some((one) => one === value);
  const chosen = field.values.filter(({ value }) => ticked(value)).map(({ text }) => text);
  const list = useRef<HTMLDetailsElement>(null);
  const isNew = useRef(draft.values.length === 0);
  useEffect(() => {
    // a new sentence opens its values: there is nothing else to do with it
    if (isNew.current && list.current) list.current.open = true;
  }, []);
  const toggle = (value: PlainValue) =>
    change({ values: ticked(value) ? draft.values.filter((one) => one !== value) : [...draft.values, value] });
  return (
    <details className="values" ref={list}>
      <summary>{chosen.length === 0 ? "choose…" : chosen.join(" or ")}</summary>
      <fieldset className="ticks sans">
        <legend className="only-heard">{field.label} is</legend>
        {field.values.map(({ value, text }) => (
          <label key={String(value)} className="tick">
            <input type="checkbox" checked={ticked(value)} onChange={() => toggle(value)} autoComplete="off" /> {text}
          </label>
        ))}
      </fieldset>
    </details>
  );
}
