"use client";

import { useRouter, useSearchParams } from "next/navigation";
import {
  type ChangeEvent,
  type FormEvent,
  Fragment,
  type KeyboardEvent,
  type ReactNode,
  useEffect,
  useRef,
  useState,
  useTransition,
} from "react";

export type Choice = { readonly value: string; readonly text: string };

/**
 * A sentence that is a form: its underlined words are choices, and the address that it makes is the question. A choice made with the
 * pointer is asked at once; one made with the keyboard waits for Enter, since arrow keys pass over every choice on the way. Ticks wait too:
 * several are made before they are asked. The answer comes into the page that stands; without scripts the form sends itself.
 */
export function Sentence({ children, action }: { readonly children: ReactNode; readonly action: string }) {
  const form = useRef<HTMLFormElement>(null);
  const byKeyboard = useRef(false);
  const [waits, setWaits] = useState(false);
  const { ask, asking, written } = useAsking(action);
  const onChange = ({ target }: ChangeEvent<HTMLFormElement>) => {
    const isTick = target instanceof HTMLInputElement && target.type === "checkbox";
    if (byKeyboard.current || isTick) setWaits(true);
    else form.current?.requestSubmit();
  };
  const onKeyDown = (event: KeyboardEvent) => {
    byKeyboard.current = true;
    if (event.key === "Enter" && waits && event.target instanceof HTMLSelectElement) form.current?.requestSubmit();
  };
  const onSubmit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    setWaits(false);
    ask(event.currentTarget);
  };
  return (
    <form
      ref={form}
      action={action}
      method="get"
      className="question"
      aria-busy={asking}
      onChange={onChange}
      onKeyDown={onKeyDown}
      onSubmit={onSubmit}
      onPointerDown={() => {
        byKeyboard.current = false;
      }}
    >
      <Fragment key={written}>{children}</Fragment>
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
      <span className="only-heard" role="status">
        {asking ? "Working it out…" : ""}
      </span>
    </form>
  );
}

/** Asks what a form holds. `written` changes when the address changed by itself (a step back): the words are then written anew, as it says. */
function useAsking(action: string) {
  const router = useRouter();
  const address = useSearchParams().toString();
  const [asking, start] = useTransition();
  const [own, setOwn] = useState<string | null>(null);
  const [shown, setShown] = useState({ address, written: 0 });
  if (shown.address !== address) setShown({ address, written: shown.written + (address === own ? 0 : 1) });
  const ask = (form: HTMLFormElement) => {
    const asked = new URLSearchParams([...new FormData(form)].map(([name, value]) => [name, String(value)])).toString();
    setOwn(asked);
    start(() => router.push(`${action}?${asked}`, { scroll: false }));
  };
  return { ask, asking, written: shown.written };
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
  const select = useRef<HTMLSelectElement>(null);
  const offered = choices.map((choice) => choice.value).join();
  // an answer can settle a word anew, and what it may be: another field has other groups
  useEffect(() => {
    if (select.current && offered !== "") select.current.value = value;
  }, [value, offered]);
  return (
    <select ref={select} name={name} aria-label={label} defaultValue={value} autoComplete="off">
      {choices.map((choice) => (
        <option key={choice.value} value={choice.value}>
          {choice.text}
        </option>
      ))}
    </select>
  );
}
