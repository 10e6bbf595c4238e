import { dayOf, onWeekday } from "./calendar";
import { chanceOf } from "./chance";
import { seed, yearWeights } from "./parameters";
import type { Case, Fate, Group, Pattern } from "./types";

type Share = { readonly group: Group; readonly pattern: Pattern; readonly persons: number; readonly segments: number };

/** 260 persons with 480 segments, every pattern by quota. Invented; bilateral stature lengthening is a third of the persons. */
export const caseload: readonly Share[] = [
  { group: "stature", pattern: "both-femora", persons: 38, segments: 2 },
  { group: "stature", pattern: "both-tibiae", persons: 10, segments: 2 },
  { group: "stature", pattern: "femora-then-tibiae", persons: 22, segments: 4 },
  { group: "stature", pattern: "tibiae-then-femora", persons: 4, segments: 4 },
  { group: "dysplasia", pattern: "both-femora", persons: 5, segments: 2 },
  { group: "dysplasia", pattern: "both-tibiae", persons: 6, segments: 2 },
  { group: "dysplasia", pattern: "tibiae-then-femora", persons: 4, segments: 4 },
  { group: "dysplasia", pattern: "both-humeri", persons: 3, segments: 2 },
  { group: "difference", pattern: "one-bone", persons: 67, segments: 1 },
  { group: "difference", pattern: "femur-and-tibia", persons: 31, segments: 2 },
  { group: "difference", pattern: "same-bone-again", persons: 21, segments: 2 },
  { group: "difference", pattern: "femur-and-tibia-then-femur", persons: 5, segments: 3 },
  { group: "difference", pattern: "one-forearm", persons: 3, segments: 1 },
  { group: "difference", pattern: "one-foot-ray", persons: 2, segments: 1 },
  { group: "difference", pattern: "one-hand-ray", persons: 1, segments: 1 },
  { group: "deformity", pattern: "one-bone", persons: 24, segments: 1 },
  { group: "deformity", pattern: "femur-and-tibia", persons: 6, segments: 2 },
  { group: "loss", pattern: "transport", persons: 8, segments: 1 },
];

type Quota = {
  readonly fate: Fate;
  readonly persons: number;
  readonly of: readonly Group[];
  readonly patterns: readonly Pattern[];
  readonly until: number;
};

/** Fates given out to the first that fit. Gains too small for an index lie before the last two years, whose sheet has a clean twin. */
const quotas: readonly Quota[] = [
  { fate: "gain-none", persons: 3, of: ["difference"], patterns: ["one-bone"], until: 2021 },
  { fate: "gain-small", persons: 4, of: ["difference", "deformity"], patterns: ["one-bone"], until: 2021 },
  { fate: "infection", persons: 2, of: ["difference", "stature"], patterns: ["one-bone", "both-femora"], until: 2023 },
  { fate: "breakage", persons: 2, of: ["stature"], patterns: ["both-femora", "femora-then-tibiae"], until: 2023 },
  { fate: "abandoned", persons: 1, of: ["difference"], patterns: ["one-bone"], until: 2022 },
  { fate: "nonunion", persons: 1, of: ["deformity"], patterns: ["one-bone"], until: 2022 },
  { fate: "amputated", persons: 1, of: ["deformity"], patterns: ["one-bone"], until: 2021 },
  {
    fate: "date-missing",
    persons: 15,
    of: ["stature", "difference", "deformity"],
    patterns: ["one-bone", "both-femora", "femur-and-tibia"],
    until: 2023,
  },
  { fate: "distracting", persons: 5, of: ["stature", "difference"], patterns: ["one-bone", "both-femora", "both-tibiae"], until: 2024 },
  { fate: "rescue-open", persons: 3, of: ["stature", "difference", "deformity"], patterns: ["one-bone", "both-tibiae"], until: 2024 },
  {
    fate: "rescue",
    persons: 9,
    of: ["stature", "difference", "deformity"],
    patterns: ["one-bone", "both-femora", "both-tibiae"],
    until: 2024,
  },
];

const staged: readonly Pattern[] = ["femora-then-tibiae", "tibiae-then-femora", "same-bone-again", "femur-and-tibia-then-femur"];

/** Every person of the scenario in order of number, with first surgery and fate. */
export function cases(): readonly Case[] {
  const chance = chanceOf(seed, "caseload");
  const kinds = chance.shuffled(
    caseload.flatMap(({ group, pattern, persons }) => Array.from({ length: persons }, () => ({ group, pattern }))),
  );
  const dated = kinds.map((kind, index) => ({ ...kind, index, firstSurgery: firstSurgeryOf(kind.pattern, index) }));
  const fates = fatesOf(dated);
  return dated.map((kind) => {
    const fate = fates.get(kind.index) ?? "ordinary";
    return { ...kind, fate, firstSurgery: fate === "distracting" ? lateIn2024(kind.index) : kind.firstSurgery };
  });
}

/** Late enough for the bone to be still drawn apart at the last film of the sheet. */
function lateIn2024(index: number): number {
  return onWeekday(dayOf(2024, 12, 9) + chanceOf(seed, "late", index).whole(0, 19));
}

function firstSurgeryOf(pattern: Pattern, index: number): number {
  const chance = chanceOf(seed, "first surgery", index);
  const year = chance.weighted(yearWeights);
  const last = year === 2024 && staged.includes(pattern) ? 120 : 361;
  return onWeekday(dayOf(year, 1, 3) + chance.whole(0, last));
}

function fatesOf(dated: readonly Omit<Case, "fate">[]): ReadonlyMap<number, Fate> {
  const fates = new Map<number, Fate>();
  for (const { fate, persons, of, patterns, until } of quotas) {
    const fitting = dated.filter(
      (kind) =>
        !fates.has(kind.index) && of.includes(kind.group) && patterns.includes(kind.pattern) && kind.firstSurgery < dayOf(until + 1, 1, 1),
    );
    for (const { index } of chanceOf(seed, "fate", fate).shuffled(fitting).slice(0, persons)) fates.set(index, fate);
  }
  return fates;
}
