import type { CurveGroup, HealingCurveAnswer } from "@/lib/answers";
import { type Column, count, decimals, listed, noValue, tableFrom, words } from "@/lib/charts";
import type { ToldTable } from "../told/told";
import { pWords } from "./side-by-side-words";

type Read = CurveGroup & { readonly betweenFilms: NonNullable<CurveGroup["betweenFilms"]> };
const wasRead = (group: CurveGroup): group is Read => group.betweenFilms !== null;
const whole = (value: number | null) => (value === null ? noValue : decimals(value, 0));

/** Of so many groups each is said; of more the table tells. */
const mostSaid = 3;

/** `Read between films …: half had healed by some day after 163 and up to 180; the film before is known of 48 of 51 healed …`. */
export function betweenFilmsText({ groups }: HealingCurveAnswer): string {
  const read = groups.filter(wasRead);
  const unread = groups.length - read.length;
  const why = "where a bone ended unhealed, or none is on the curve, nothing is";
  if (read.length === 0) return `Nothing is read between films: ${why}.`;
  const said = listed(read.map((group) => `${read.length === 1 ? "" : `${group.label}: `}${medianText(group)}`));
  const each = read.length > mostSaid ? `${read.length} groups, in the table below` : said;
  const before = read.reduce((sum, { betweenFilms }) => sum + betweenFilms.withFilmBefore, 0);
  const healed = read.reduce((sum, group) => sum + group.healed, 0);
  const known = `the film before is known of ${before} of ${healed} healed, the others count on the day of their film`;
  return `Read between films, since a film shows healing late: ${each}; ${known}${unread === 0 ? "" : `; ${why}`}.`;
}

function medianText({ betweenFilms: { medianDays, medianSpan } }: Read): string {
  if (medianDays === null || medianSpan === null) return "half had not healed";
  const [from, to] = medianSpan;
  return from === to ? `half had healed by ${whole(to)} days` : `half had healed by some day after ${whole(from)} and up to ${whole(to)}`;
}

/** What is read between films, a group a row. */
export function betweenFilmsTable({ groups }: HealingCurveAnswer): ToldTable {
  const columns: Column<CurveGroup>[] = [
    words("group", "Group", ({ label }) => label),
    count("healed", "Healed", ({ healed }) => healed),
    count("before", "With a film before", ({ betweenFilms }) => betweenFilms?.withFilmBefore),
    {
      id: "quarter",
      head: "A quarter healed, days",
      align: "end",
      cell: ({ betweenFilms }) => whole(betweenFilms?.quartiles.lower ?? null),
    },
    { id: "half", head: "Half, days", align: "end", cell: ({ betweenFilms }) => whole(betweenFilms?.medianDays ?? null) },
    { id: "three", head: "Three quarters, days", align: "end", cell: ({ betweenFilms }) => whole(betweenFilms?.quartiles.upper ?? null) },
    { id: "film", head: "Half, by the film that showed it", align: "end", cell: ({ median }) => whole(median.days) },
  ];
  return { caption: "Read between films", table: tableFrom(columns, groups) };
}

/** Whether the curves differ, where that was asked. */
export function curveTestText({ test }: HealingCurveAnswer): string {
  if (test === null) return "A p value needs two groups with a curve.";
  if (test.p === null) return `No p value can be had over the ${test.groups} groups (${test.method}): see the notes.`;
  return `That all ${test.groups} groups have one curve: p ${pWords(test.p)} (${test.method}).`;
}
