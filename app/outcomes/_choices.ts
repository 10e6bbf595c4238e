import type { MeasureEntry } from "@/lib/answers";
import type { Choice } from "./_client/sentence";
import type { OutcomesQuestion } from "./_question";

/** Every clock, the unit's own indices last; other measures have places of their own. */
export function measureChoices(clocks: readonly MeasureEntry[]): readonly Choice[] {
  return clocks.map(({ id, title }) => ({ value: id, text: title.toLowerCase() }));
}

export const rescueChoices: readonly Choice[] = [
  { value: "counted", text: "however it was obtained" },
  { value: "competing", text: "without further bone surgery" },
];

export const filmsChoices: readonly Choice[] = [
  { value: "showed", text: "by the film that showed it" },
  { value: "between", text: "by that film, and between films" },
];

export const testChoices: readonly Choice[] = [
  { value: "no", text: "left out" },
  { value: "yes", text: "shown" },
];

export const unitChoices: readonly Choice[] = [
  { value: "days", text: "days/cm" },
  { value: "months", text: "months/cm" },
];

/** The same question at the command line. */
export function commandFor({ measure, by, rescue, where, asOf }: OutcomesQuestion): string {
  const cohort = Object.keys(where).length === 0 ? "" : ` --cohort '${JSON.stringify(where).replaceAll("'", "'\\''")}'`;
  const split = by.length === 0 ? "" : ` --by ${by.join(",")}`;
  const batch = asOf === null ? "" : ` --as-of ${asOf}`;
  return `npm run -s lengthbook -- measure ${measure}${split} --rescue ${rescue}${cohort}${batch}`;
}
