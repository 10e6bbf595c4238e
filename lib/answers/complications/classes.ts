import { type Scheme, worseOf } from "@/lib/outcomes";
import type { CountedSegment } from "./counted";

/** Events by class; of a scheme that classes treatments, treatments by class. */
export function classCounts(segments: readonly CountedSegment[], scheme: Scheme): Record<string, number> {
  const counts: Record<string, number> = Object.fromEntries(scheme.classes.map((name) => [name, 0]));
  for (const { classes } of segments) for (const name of classes) counts[name] = (counts[name] ?? 0) + 1;
  return counts;
}

/** The heaviest class of each patient's segments; `null` where there was no event. */
function worstByPatient(segments: readonly CountedSegment[], scheme: Scheme): ReadonlyMap<number, string | null> {
  const worst = new Map<number, string | null>();
  for (const { one, classes } of segments) {
    const heaviest = classes.reduce<string | null>((held, name) => worseOf(scheme, held, name), null);
    worst.set(one.segment.person, worseOf(scheme, worst.get(one.segment.person) ?? null, heaviest));
  }
  return worst;
}

/** Each patient's heaviest class as its place in the scheme, from 1; 0 where there was no event. */
export function worstPlaces(
  segments: readonly CountedSegment[],
  scheme: Scheme,
): readonly { readonly person: number; readonly place: number }[] {
  return [...worstByPatient(segments, scheme)].map(([person, name]) => ({
    person,
    place: name === null ? 0 : scheme.classes.indexOf(name) + 1,
  }));
}

/** Patients by the heaviest class of their segments; `none` where there was no event. */
export function worstOf(segments: readonly CountedSegment[], scheme: Scheme) {
  const worst = worstByPatient(segments, scheme);
  const counts: Record<string, number> = { none: 0, ...Object.fromEntries(scheme.classes.map((name) => [name, 0])) };
  for (const name of worst.values()) counts[name ?? "none"] = (counts[name ?? "none"] ?? 0) + 1;
  return { n: worst.size, classes: counts };
}
