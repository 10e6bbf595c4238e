import type { DistributionGroup, DistributionRecord } from "@/lib/charts";
import { inventedSource } from "./figure-cases";
import { invented } from "./invented";

/** Invented values of a measure; every other two are of one patient. */
export function inventedRows(n: number, { seed = 5, middle = 0, spread = 8, whole = false } = {}) {
  const next = invented(seed);
  return Array.from({ length: n }, (_, index) => {
    const value = middle + (next() + next() + next() + next() - 2) * spread * 1.7;
    return { person: Math.floor(index / 2) + 1, segment: index + 1, value: whole ? Math.round(value) : value };
  });
}

export function inventedNumbers(
  label: string,
  rows: NonNullable<DistributionGroup["rows"]>,
  more: Partial<DistributionGroup> = {},
): DistributionGroup {
  const patients = new Set(rows.map(({ person }) => person)).size;
  return {
    label,
    segments: rows.length + 3,
    patients: patients + 1,
    n: rows.length,
    excluded: { "no-target": 2, "no-gain": 1, "two-level": 0 },
    mean: { estimate: -1.72, lower: -3.11, upper: -0.33, n: rows.length, patients },
    median: { estimate: -1 },
    quartiles: { lower: -6.2, upper: 3.1 },
    rows,
    ...more,
  };
}

export function inventedDistribution(groups: readonly DistributionGroup[], more: Partial<DistributionRecord> = {}): DistributionRecord {
  return {
    ...inventedSource,
    definition: { title: "Gain less plan", sentence: "gain on film at the end of distraction less the plan at the start" },
    by: groups.length > 1 ? ["bone"] : [],
    unit: "mm",
    groups,
    ...more,
  };
}
