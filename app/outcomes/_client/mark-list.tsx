"use client";

import { useState } from "react";

/** Every mark of a figure in words, written when it is opened. Of a crowd it says what it leaves out, and where that stands. */
export function MarkList({ crowded, labels }: { readonly crowded: boolean; readonly labels: () => readonly string[] }) {
  const [list, setList] = useState<readonly string[]>([]);
  return (
    <details onToggle={(event) => setList(event.currentTarget.open ? labels() : [])}>
      <summary>{crowded ? "The marks that stand alone, as a list" : "Every mark as a list"}</summary>
      {crowded ? (
        <p>
          Marks drawn together have no names and are not in this list. They are in the numbers of their groups (.csv), and each in the
          Casebook.
        </p>
      ) : null}
      <ol className="number">
        {list.map((label, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: marks have no other name, and never change their order
          <li key={index}>{label}</li>
        ))}
      </ol>
    </details>
  );
}
