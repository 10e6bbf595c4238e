import type { Difference, SeveralAnswer, SeveralFamilyAnswer } from "@/lib/answers";
import { counted, decimals, listed } from "@/lib/charts";
import { limitsText, pText, unlikeFrom } from "./side-by-side-words";

type Member = SeveralFamilyAnswer["members"][number];

/** Up to this many groups are named one by one in a sentence; of more, those that stand apart. */
const mostNamed = 4;

/** Who stands beside whom, and in which fields any two of them were unlike to begin with. */
export function severalBalanceText({ sides, balance }: SeveralAnswer): string {
  const who = whoText(sides);
  const known = balance.flatMap(({ label, smd }) => (smd === null ? [] : [{ label, smd }]));
  const unlike = known.filter(({ smd }) => smd > unlikeFrom).sort((a, b) => b.smd - a.smd);
  if (known.length === 0) return `${who}: nothing recorded tells whether the groups were alike to begin with.`;
  if (unlike.length === 0) return `${who}: alike to begin with in all ${known.length} fields that can be compared.`;
  const names = listed(unlike.slice(0, 4).map(({ label, smd }) => `${label.toLowerCase()} (${decimals(smd, 2)})`));
  const more = unlike.length > 4 ? `, and ${unlike.length - 4} more` : "";
  return `${who}: two of them or more unlike to begin with in ${unlike.length} of ${known.length} fields, most in ${names}${more}.`;
}

function whoText(sides: SeveralAnswer["sides"]): string {
  const named = sides.map(
    ({ words, segments, patients }) => `${words} (${counted(segments, "segment")} in ${counted(patients, "patient")})`,
  );
  if (sides.length <= mostNamed) return listed(named);
  const sizes = sides.map(({ segments }) => segments);
  return `${sides.length} groups of ${Math.min(...sizes)} to ${counted(Math.max(...sizes), "segment")}`;
}

/** `Gain, mean of each group less that of all others: Frame −3.1 mm (95 % CI …), …; no difference is shown; over all groups p 0.031.` */
export function severalText({ answer, holm }: Member, test: boolean): string {
  const { definition, differences, p } = answer;
  if (differences.length === 0) return `${definition.title}: fewer than three groups were measured, so they can’t be compared at once.`;
  const tested = test ? `; over all groups ${pText(p, holm)}` : "";
  return `${definition.title}, mean of each group less that of all others: ${differencesText(answer)}${tested}.`;
}

function differencesText(answer: SeveralAnswer): string {
  const { differences } = answer;
  const text = (some: readonly Difference[]) => some.map((one) => `${wordsOf(one, answer)} ${limitsText(one)}`).join(", ");
  const apart = differences.filter(({ lower, upper }) => lower !== null && upper !== null && (lower > 0 || upper < 0));
  if (apart.length === 0)
    return differences.length > mostNamed ? "no group is shown to differ" : `${text(differences)}; no group is shown to differ`;
  const others = differences.length - apart.length;
  if (differences.length > mostNamed) return `${text(apart)}${others === 0 ? "" : `; of the other ${others} no difference is shown`}`;
  return `${text(differences)}; shown to differ: ${listed(apart.map((one) => wordsOf(one, answer)))}`;
}

/** A group as the page names it. */
export function wordsOf({ a }: Difference, { groups, sides }: SeveralAnswer): string {
  return sides[groups.findIndex(({ label }) => label === a)]?.words ?? a;
}
