"use client";

import { type ChangeEvent, type KeyboardEvent, type ReactNode, useRef, useState } from "react";

export type Choice = { readonly value: string; readonly text: string };

/**
 * A sentence that is a form: its underlined words are choices, and the address that it makes is the question. A choice made with the
 * pointer is asked at once; one made with the keyboard waits for Enter, since arrow keys pass over every choice on the way. Ticks wait too:
 * several are made before they are asked.
 */
export function Sentence({ children, action }: { readonly children: ReactNode; readonly action: string }) {
  const form = useRef<HTMLFormElement>(null);
  const byKeyboard = useRef(false);
  const [waits, setWaits] = useState(false);
  const onChange = ({ target }: ChangeEvent<HTMLFormElement>) => {
    const isTick = target instanceof HTMLInputElement && target.type === "checkbox";
    if (byKeyboard.current || isTick) setWaits(true);
    else form.current?.requestSubmit();
  };
  const onKeyDown = (event: KeyboardEvent) => {
    byKeyboard.current = true;
    if (event.key === "Enter" && waits && event.target instanceof HTMLSelectElement) form.current?.requestSubmit();
  };
  return (
    <form
      ref={form}
      action={action}
      method="get"
      className="question"
      onChange={onChange}
      onKeyDown={onKeyDown}
      onPointerDown={() => {
        byKeyboard.current = false;
      }}
    >
      {children}
      {waits ? (
        <>
          {" "}
          <button type="submit">Ask</button>
        </>
      ) : (
        <noscript>
          <button type="submit">Ask</button>
        </noscript>
      )}
    </form>
  );
}

type WordProps = { readonly name: string; readonly label: string; readonly value: string; readonly choices: readonly Choice[] };

/** A word that can be changed; the comma behind it stays on its line. */
export function Word({ comma = false, ...word }: WordProps & { readonly comma?: boolean }) {
  return comma ? (
    <span className="unbroken">
      <Choices {...word} />,
    </span>
  ) : (
    <Choices {...word} />
  );
}

function Choices({ name, label, value, choices }: WordProps) {
  return (
    <select name={name} aria-label={label} defaultValue={value} autoComplete="off">
      {choices.map((choice) => (
        <option key={choice.value} value={choice.value}>
          {choice.text}
        </option>
      ))}
    </select>
  );
}
