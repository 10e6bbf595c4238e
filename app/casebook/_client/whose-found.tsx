"use client";

import { counted } from "@/lib/charts";
import type { WhoseFound } from "../_whose/talk";

type Props = { readonly found: readonly WhoseFound[]; readonly from: string; readonly only: number | null };

/** Which number is which case; those on the list in view first, and those under which nothing is held last. */
export function WhoseFoundList({ found, from, only }: Props) {
  const held = found.filter(({ case: number }) => number !== null && (only === null || number === only));
  const listed = held.filter((one) => one.listed);
  const elsewhere = held.filter((one) => !one.listed);
  const none = found.filter(({ case: number }) => number === null);
  return (
    <div className="sans" role="status">
      <p>{gist(found, from, only)}</p>
      <Matches title="On the list in view" found={listed} />
      <Matches title={listed.length === 0 ? "Held" : "Held, and not on the list in view"} found={elsewhere} />
      {none.length === 0 || only !== null ? null : (
        <details>
          <summary>{counted(none.length, "number")} under which nothing is held</summary>
          <p className="numbers">{none.map(({ number }) => number).join(", ")}</p>
        </details>
      )}
    </div>
  );
}

function gist(found: readonly WhoseFound[], from: string, only: number | null): string {
  const held = found.filter(({ case: number }) => number !== null);
  if (only !== null)
    return held.some(({ case: number }) => number === only)
      ? `Case ${only} is among them.`
      : `None of ${counted(found.length, "number")} is case ${only}.`;
  const cases = new Set(held.map(({ case: number }) => number)).size;
  return `Of ${counted(found.length, "number")} (${from}), ${held.length} ${held.length === 1 ? "is" : "are"} held, as ${counted(cases, "case")}; ${held.filter(({ listed }) => listed).length} on the list in view.`;
}

function Matches({ title, found }: { readonly title: string; readonly found: readonly WhoseFound[] }) {
  if (found.length === 0) return null;
  return (
    <>
      <p className="muted">{title}</p>
      <ul className="matches">
        {found.map(({ number, case: held }) => (
          <li key={number}>
            <strong>{number}</strong> is <a href={`/casebook/${held}`}>case {held}</a>
          </li>
        ))}
      </ul>
    </>
  );
}
