"use client";

import type { Dispatch } from "react";
import { Condition } from "./condition";
import type { DraftGroup, Join } from "./draft";
import type { Edit } from "./edit";
import type { FieldGroup } from "./offered";

type Props = {
  readonly draft: DraftGroup;
  readonly groups: readonly FieldGroup[];
  readonly dispatch: Dispatch<Edit>;
  /** How many groups this one stands in; the outermost has no words of its own. */
  readonly depth: number;
};

const joins: readonly (readonly [Join, string])[] = [
  ["any", "at least one of these holds"],
  ["all", "all of these hold"],
  ["none", "none of these holds"],
  ["not-all", "not all of these hold"],
];

/** Sentences that belong together. */
export function Group({ draft, groups, dispatch, depth }: Props) {
  const items = (
    <ol className="conditions">
      {draft.items.map((item) =>
        item.kind === "group" ? (
          <li key={item.id}>
            <Group draft={item} groups={groups} dispatch={dispatch} depth={depth + 1} />
          </li>
        ) : (
          <Condition key={item.id} draft={item} groups={groups} dispatch={dispatch} />
        ),
      )}
    </ol>
  );
  const add = (
    <p className="add sans">
      <button type="button" className="quiet" onClick={() => dispatch({ edit: "add-condition", into: draft.id })}>
        add a condition
      </button>
      {depth > 0 ? (
        <button type="button" className="quiet" onClick={() => dispatch({ edit: "remove", id: draft.id })}>
          leave these out
        </button>
      ) : (
        <>
          <button type="button" className="quiet" onClick={() => dispatch({ edit: "add-group", into: draft.id, join: "any" })}>
            add several of which one must hold
          </button>
          <button type="button" className="quiet" onClick={() => dispatch({ edit: "add-group", into: draft.id, join: "none" })}>
            add some that must not hold
          </button>
        </>
      )}
    </p>
  );
  if (depth === 0)
    return (
      <>
        {items}
        {add}
      </>
    );
  return (
    <fieldset className="condition-group" data-join={draft.join}>
      <legend className="only-heard">Conditions together</legend>
      <select
        aria-label="How these hold together"
        value={draft.join}
        onChange={(event) => dispatch({ edit: "join", id: draft.id, join: event.target.value as Join })}
        autoComplete="off"
      >
        {joins.map(([join, text]) => (
          <option key={join} value={join}>
            {text}
          </option>
        ))}
      </select>
      {": "}
      {items}
      {add}
    </fieldset>
  );
}
