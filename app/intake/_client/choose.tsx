"use client";

import { type KeyboardEvent, type ReactNode, useId, useState } from "react";
import { fold } from "@/lib/codebook";

export type Option = {
  readonly id: string;
  readonly label: string;
  readonly group: string;
  /** Further words under which it is found. */
  readonly words: string;
};
const none = -1;
type Props = {
  readonly label: ReactNode;
  readonly options: readonly Option[];
  readonly onChoose: (id: string) => void;
  readonly onLeave?: () => void;
  /** Keys that do something else while nothing is typed; `true` when it did. */
  readonly onKeyWhenEmpty?: (key: string) => boolean;
  readonly takesFocus?: boolean;
  readonly hint?: string;
};

/** A list that narrows as one types; arrow keys walk in it, Enter takes the one in hand, Escape leaves. */
export function Choose({ label, options, onChoose, onLeave, onKeyWhenEmpty, takesFocus = false, hint = "" }: Props) {
  const id = useId();
  const [typed, setTyped] = useState("");
  const [at, setAt] = useState(none);
  const found = narrowed(options, typed);
  // with nothing typed no option is in hand, so that a stray Enter takes none
  const inHand = Math.min(typed === "" ? at : Math.max(at, 0), found.length - 1);
  const choose = (option: Option | undefined) => {
    if (!option) return;
    setTyped("");
    setAt(none);
    onChoose(option.id);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const walked = walk(event.key, inHand, found.length);
    if (walked !== null) setAt(walked);
    else if (event.key === "Enter") choose(found[inHand]);
    else if (event.key === "Escape" && onLeave) onLeave();
    else if (typed !== "" || !onKeyWhenEmpty?.(event.key)) return;
    event.preventDefault();
  };
  return (
    <div className="choose sans">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        role="combobox"
        aria-expanded={found.length > 0}
        aria-controls={`${id}-list`}
        aria-autocomplete="list"
        aria-activedescendant={found[inHand] ? `${id}-${inHand}` : undefined}
        aria-describedby={hint === "" ? undefined : `${id}-hint`}
        value={typed}
        autoComplete="off"
        spellCheck={false}
        ref={(input) => {
          if (takesFocus && input && document.activeElement !== input && input.dataset.taken === undefined) input.focus();
          if (input) input.dataset.taken = "";
        }}
        onChange={(event) => {
          setTyped(event.target.value);
          setAt(none);
        }}
        onKeyDown={onKeyDown}
      />
      {hint === "" ? null : (
        <p id={`${id}-hint`} className="muted small">
          {hint}
        </p>
      )}
      <Found id={id} found={found} inHand={inHand} choose={choose} />
      {found.length === 0 ? <p className="muted">Nothing goes by these words.</p> : null}
      <p className="only-heard" role="status">
        {typed === "" ? "" : `${found.length} found`}
      </p>
    </div>
  );
}

type FoundProps = {
  readonly id: string;
  readonly found: readonly Option[];
  readonly inHand: number;
  readonly choose: (option: Option) => void;
};

function Found({ id, found, inHand, choose }: FoundProps) {
  return (
    <div role="listbox" id={`${id}-list`} aria-label="Found" className="found">
      {found.map((option, i) => (
        <div
          key={option.id}
          id={`${id}-${i}`}
          role="option"
          aria-selected={i === inHand}
          // the keyboard walks the list from the line above it
          tabIndex={-1}
          ref={(element) => {
            if (i === inHand) element?.scrollIntoView({ block: "nearest" });
          }}
          onPointerDown={(event) => event.preventDefault()}
          onClick={() => choose(option)}
          onKeyDown={() => {}}
        >
          {option.label} <span className="muted small">{option.group}</span>
        </div>
      ))}
    </div>
  );
}

/** Options in which each word typed begins a word; those whose label begins so come first. */
function narrowed(options: readonly Option[], typed: string): readonly Option[] {
  const words = fold(typed).split(" ").filter(Boolean);
  if (words.length === 0) return options;
  const found = options.filter(({ label, words: more }) => {
    const all = ` ${fold(`${label} ${more}`)}`;
    return words.every((word) => all.includes(` ${word}`));
  });
  const first = (option: Option) => (fold(option.label).startsWith(words[0] ?? "") ? 0 : 1);
  return [...found].sort((a, b) => first(a) - first(b));
}

function walk(key: string, at: number, count: number): number | null {
  if (count === 0) return null;
  if (key === "ArrowDown") return Math.min(count - 1, at + 1);
  if (key === "ArrowUp") return Math.max(0, at - 1);
  return null;
}
