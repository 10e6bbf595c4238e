import type { HealingGroupForFigure, HealingMarkForFigure, HealingRecordForFigure } from "@/lib/charts";

/** Invented records for drawings. Their summaries are made up beside the marks: a drawing must show what the record says, right or wrong. */
export function inventedRecord(
  groups: readonly HealingGroupForFigure[],
  more: Partial<HealingRecordForFigure> = {},
): HealingRecordForFigure {
  return {
    definition: {
      title: "Surgery to consolidation",
      sentence: "days from surgery to consolidation per cm gained, on film at the end of distraction; healing however obtained",
    },
    by: groups.length > 1 ? ["bone"] : [],
    batch: 3,
    stamp: "0a1b2c3d4e5f",
    dataTo: "2024 Q3",
    groups,
    ...more,
  };
}

/** A multiplicative generator with a fixed start: invented marks, the same at every run. */
export function invented(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

export function inventedMarks(n: number, { seed = 7, middle = 34 }: { seed?: number; middle?: number } = {}): HealingMarkForFigure[] {
  const next = invented(seed);
  return Array.from({ length: n }, (_, index) => {
    const spread = next() + next() + next() + next() - 2;
    const kind = next();
    return {
      segment: index + 1,
      status: kind < 0.9 ? "healed" : kind < 0.92 ? "rescued" : "not-healed-at-last-film",
      rescued: kind > 0.86 && kind < 0.9,
      value: middle * Math.exp(spread * 0.5),
      gainMm: 30 + Math.round(next() * 50),
    };
  });
}

export function inventedGroup(
  label: string,
  marks: readonly HealingMarkForFigure[],
  more: Partial<HealingGroupForFigure> = {},
): HealingGroupForFigure {
  const healed = marks.filter((mark) => mark.status === "healed").length;
  const mean = { estimate: 31.21, lower: 28.93, upper: 33.49, n: healed, patients: Math.ceil(healed / 2) };
  return {
    label,
    segments: marks.length + 2,
    patients: Math.ceil(marks.length / 2) + 1,
    healed,
    censored: marks.length - healed,
    ended: 0,
    rescued: marks.filter((mark) => mark.rescued).length,
    excluded: { "still-distracting": 0, "healing-date-missing": 2 },
    mean,
    patientMean: { ...mean, estimate: 31.5, lower: 29.01, upper: 33.99 },
    ratioOfSums: { ...mean, estimate: 30.04, lower: 28.2, upper: 31.88 },
    plain: { ...mean, lower: 29.35, upper: 33.07 },
    deviation: 9.4,
    median: { estimate: 33.3, lower: null, upper: null, bounds: [32.8, 34.1] },
    quartiles: { lower: 26.4, upper: 40.6 },
    daysAtMedianGain: { gainMm: 51.2, days: 160.4, lower: 150.6, upper: 171.1 },
    medianFilmIntervalDays: 41,
    marks,
    ...more,
  };
}

export function emptyGroup(label: string): HealingGroupForFigure {
  const nothing = { estimate: null, lower: null, upper: null, n: 0, patients: 0 };
  return inventedGroup(label, [], {
    segments: 3,
    patients: 2,
    excluded: { "no-gain": 1, "healing-date-missing": 2 },
    mean: nothing,
    patientMean: nothing,
    ratioOfSums: nothing,
    plain: nothing,
    deviation: null,
    median: { estimate: null, lower: null, upper: null, bounds: [null, null] },
    quartiles: { lower: null, upper: null },
    daysAtMedianGain: null,
    medianFilmIntervalDays: null,
  });
}
