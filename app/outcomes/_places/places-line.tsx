"use client";

import { usePathname, useSearchParams } from "next/navigation";
import { type Place, places } from "./places";

/** What a question keeps when it is asked at another place: who, split by what, as of when. */
const kept = ["where", "by", "asOf"];

/** The single line of places. It carries the cohort along, so that the same bones are asked the next question. */
export function PlacesLine() {
  const here = usePathname();
  const asked = useSearchParams();
  const along = new URLSearchParams([...asked].filter(([name, value]) => kept.includes(name) && value !== "")).toString();
  const address = ({ path }: Place) => (along === "" ? path : `${path}?${along}`);
  return (
    <nav className="places sans not-printed" aria-label="Outcomes">
      <ul>
        {places.map((place) => (
          <li key={place.id}>
            <a href={address(place)} aria-current={place.path === here ? "page" : undefined}>
              {place.name}
            </a>
          </li>
        ))}
      </ul>
    </nav>
  );
}
