"use client";

import { type FormEvent, type ReactNode, useEffect, useState } from "react";
import { canBeFound } from "@/lib/codebook";

type Props = { readonly search: string; readonly highestCase: number; readonly children: ReactNode };

/**
 * The field of the search. What is looked for stands in the address, and an address is remembered: a word that can stand in no case, such as
 * a name or a local number, is told here, and goes nowhere. Before this can be looked at nothing is sent at all.
 */
export function SearchForm({ search, highestCase, children }: Props) {
  const [isReady, setReady] = useState(false);
  const [isStrange, setStrange] = useState(false);
  useEffect(() => setReady(true), []);
  const look = (event: FormEvent<HTMLFormElement>) => {
    const typed = new FormData(event.currentTarget).get("search");
    const strange = !canBeFound(String(typed), highestCase);
    setStrange(strange);
    if (strange) event.preventDefault();
  };
  return (
    <form action="/casebook" method="get" className="search sans not-printed" onSubmit={look} noValidate>
      <label htmlFor="search">Search</label>
      <input
        id="search"
        name="search"
        type="search"
        defaultValue={search}
        maxLength={200}
        autoComplete="off"
        spellCheck={false}
        aria-describedby="search-hint search-strange"
        aria-invalid={isStrange}
        onChange={() => setStrange(false)}
      />
      <button type="submit" disabled={!isReady}>
        Find
      </button>
      <span id="search-hint" className="muted small hint">
        A case’s number, a year, a surgeon’s code, or words: <em>femur left magnetic</em>
      </span>
      {children}
      <p id="search-strange" role="alert" className="said warm" hidden={!isStrange}>
        Nothing was sent: no case holds such a word. Cases have numbers from 1 to {highestCase}, years, and recorded words; names and local
        numbers are never held. <a href="#whose">Look a local number up</a> in this tab alone.
      </p>
    </form>
  );
}
