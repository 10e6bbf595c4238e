"use client";

import { type KeyboardEvent, useEffect, useState } from "react";
import { counted } from "@/lib/charts";
import type { CodedEvent, CodedRow } from "@/lib/intake";
import type { CommentShown } from "../_talk/view";
import { Choose } from "./choose";
import { CodedEventLine } from "./coded-event-line";
import { codedOf } from "./coding";
import { eventOptions } from "./event-options";
import type { IntakeStore } from "./store";

type Props = {
  readonly store: IntakeStore;
  readonly coded: readonly CodedRow[];
  readonly index: number;
  readonly of: number;
  readonly isCoded: (index: number) => boolean;
  readonly goTo: (index: number) => void;
  readonly code: (events: readonly CodedEvent[] | null, indices: readonly number[]) => void;
};

const options = eventOptions();
const keys =
  "Type to find an event, Enter adds it. With nothing typed: 0 nothing to code, Page Down the next comment, Page Up the one before.";

/** A comment beside what else its row says, and the catalogue of events under the hand. */
export function CommentDesk({ store, coded, index, of, isCoded, goTo, code }: Props) {
  const shown = useComment(store, index);
  const [said, setSaid] = useState("");
  if (shown === null) return <p className="muted">Turning to the comment.</p>;
  const events = codedOf(coded, shown)?.events ?? [];
  const done = isCoded(index);
  const move = (to: number) => goTo(Math.max(0, Math.min(of - 1, to)));
  const alike = shown.alike.filter((i) => !isCoded(i));
  const nothing = (indices: readonly number[]) => {
    code([], indices);
    setSaid(indices.length > 1 ? `Nothing to code in ${indices.length} comments.` : "Nothing to code.");
    move(index + 1);
  };
  const onKeyWhenEmpty = (key: string) => {
    if (key === "0") nothing([index]);
    else if (key === "PageDown") move(index + 1);
    else if (key === "PageUp") move(index - 1);
    else return false;
    return true;
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.target instanceof HTMLInputElement && event.target.role === "combobox") return;
    if ((event.key === "PageDown" || event.key === "PageUp") && onKeyWhenEmpty(event.key)) event.preventDefault();
  };
  return (
    <section className="desk" aria-label={`Comment ${index + 1} of ${of}`} onKeyDown={onKeyDown}>
      <div className="paper">
        <p className="sans muted number">
          Comment {index + 1} of {of}, row {shown.row}
          {done ? (events.length === 0 ? ": nothing to code" : `: ${counted(events.length, "event")} coded`) : ""}
        </p>
        <blockquote>{shown.text}</blockquote>
      </div>
      <div className="catalogue">
        <ul className="plain">
          {events.map((event, i) => (
            <CodedEventLine
              // biome-ignore lint/suspicious/noArrayIndexKey: events of a comment have no other name, and keep their order
              key={i}
              event={event}
              change={(changed) => code(changed === null ? without(events, i) : events.with(i, changed), [index])}
            />
          ))}
        </ul>
        <Choose
          key={index}
          label="What happened?"
          options={options}
          takesFocus
          hint={keys}
          onKeyWhenEmpty={onKeyWhenEmpty}
          onChoose={(eventType) => {
            code([...events, { eventType }], [index]);
            setSaid(`${options.find(({ id }) => id === eventType)?.label} added.`);
          }}
        />
        <div className="doings sans">
          <button type="button" onClick={() => nothing([index])}>
            Nothing to code
          </button>
          {alike.length === 0 ? null : (
            <button type="button" onClick={() => nothing([index, ...alike])}>
              Nothing to code, here and in {alike.length} with the same words
            </button>
          )}
          <button type="button" disabled={index === 0} onClick={() => move(index - 1)}>
            Previous
          </button>
          <button type="button" disabled={index === of - 1} onClick={() => move(index + 1)}>
            Next
          </button>
          {done ? (
            <button type="button" className="as-link" onClick={() => code(null, [index])}>
              Leave it uncoded
            </button>
          ) : null}
        </div>
        <p className="only-heard" role="status">
          {said}
        </p>
      </div>
      <Facts facts={shown.facts} />
    </section>
  );
}

function Facts({ facts }: Pick<CommentShown, "facts">) {
  return (
    <details open className="row-facts">
      <summary>What else the row says</summary>
      <dl className="facts sans number">
        {facts.map(({ header, cell }) => (
          <div key={header}>
            <dt>{header}</dt>
            <dd>{cell}</dd>
          </div>
        ))}
      </dl>
    </details>
  );
}

function without(events: readonly CodedEvent[], index: number): readonly CodedEvent[] {
  return events.filter((_, i) => i !== index);
}

/** The comment of an index, asked of the worker; the one before stays until it comes. */
function useComment(store: IntakeStore, index: number): CommentShown | null {
  const [shown, setShown] = useState<CommentShown | null>(null);
  useEffect(() => {
    let wanted = true;
    void store.quietly("comment", { index }).then((answer) => {
      if (wanted && answer) setShown(answer);
    });
    return () => {
      wanted = false;
    };
  }, [store, index]);
  return shown;
}
