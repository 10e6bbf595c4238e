import { clockList } from "@/lib/answers";
import { conditionField } from "@/lib/cohorts";
import type { Choice } from "./_client/sentence";
import type { OutcomesQuestion } from "./_question";

/** The splits that the sentence offers; an address may name any field of a segment or its patient. */
const splits = [
  "bone",
  "device",
  "indication",
  "aetiology",
  "arrangement",
  "entry",
  "osteotomySite",
  "osteotomyTechnique",
  "osteotomyOrientation",
  "growthPlates",
  "smoking",
  "sex",
  "surgeryYear",
  "auditYear",
];

export function measureChoices(): readonly Choice[] {
  return clockList().map(({ id, title }) => ({ value: id, text: title.toLowerCase() }));
}

export function splitChoices(by: readonly string[]): readonly Choice[] {
  const own = by.join(",");
  const offered = splits.map((field) => ({ value: field, text: splitWords([field]) }));
  const more = own === "" || splits.includes(own) ? [] : [{ value: own, text: splitWords(by) }];
  return [{ value: "", text: "nothing" }, ...offered, ...more];
}

/** `bone and device`. */
export function splitWords(by: readonly string[]): string {
  return by.map((field) => (conditionField(field)?.label ?? field).toLowerCase()).join(" and ");
}

export const rescueChoices: readonly Choice[] = [
  { value: "counted", text: "however it was obtained" },
  { value: "competing", text: "without further bone surgery" },
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
