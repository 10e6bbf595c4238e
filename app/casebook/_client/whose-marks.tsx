"use client";

import { useEffect, useState } from "react";
import { createPortal } from "react-dom";
import type { WhoseFound } from "../_whose/talk";

/** Writes the numbers beside their cases in the table of the page. */
export function WhoseMarks({ found }: { readonly found: readonly WhoseFound[] }) {
  const [places, setPlaces] = useState<readonly HTMLElement[]>([]);
  useEffect(() => setPlaces([...document.querySelectorAll<HTMLElement>("[data-whose]")]), []);
  const numbers = new Map<string, string[]>();
  for (const { number, case: held } of found) if (held !== null) numbers.set(String(held), [...(numbers.get(String(held)) ?? []), number]);
  return places.map((place, i) => {
    const own = numbers.get(place.dataset.whose ?? "");
    return own ? createPortal(own.join(", "), place, String(i)) : null;
  });
}
