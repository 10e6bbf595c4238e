import { type Covariate, cr2Difference, estimate, smallestDetectableDifference } from "@/lib/stats";
import { seed } from "../healing/median-interval";
import { said } from "../healing/said";
import type { Note } from "../types";
import type { Side } from "./sides";

/** One estimate of how two groups differ, first less second or first over second. */
export type Difference = {
  readonly a: string;
  readonly b: string;
  readonly kind: "difference" | "ratio";
  readonly what: string;
  readonly estimate: number | null;
  readonly se: number | null;
  readonly df: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly p: number | null;
  readonly method: string;
  readonly adjustedFor: readonly string[];
  /** Smallest difference that groups like these could have shown with 80 % power; of days at equal gain the smallest ratio above 1. */
  readonly detectable: number | null;
};
export type Compared = { readonly differences: readonly Difference[]; readonly notes: readonly Note[] };
export type Asked = { readonly adjust: readonly string[]; readonly test: boolean; readonly landmark?: number | undefined };

export const labels = ["a", "b"] as const;

type ValueRow = { readonly value: number; readonly person: number; readonly group: "a" | "b"; readonly gainMm: number | null };

/** Means of two groups; patients in both are compared within themselves. */
export function means(
  rows: readonly ValueRow[],
  sides: readonly [Side, Side],
  { what, test, isIndex }: { readonly what: string; readonly test: boolean; readonly isIndex: boolean },
): Compared {
  if (!hasBoth(rows)) return { differences: [], notes: [] };
  const answer = estimate({
    situation: "two-means",
    values: rows.map((row) => row.value),
    group: rows.map((row) => row.group),
    patient: rows.map((row) => row.person),
    between: labels,
    ...(isIndex ? { gains: rows.map((row) => row.gainMm ?? 0) } : {}),
    seed,
    test,
  });
  const { difference, patientMeans, withinPatients } = answer.records;
  const lead = answer.lead === "withinPatients" ? withinPatients : answer.lead === "patientMeans" ? patientMeans : difference;
  const record = lead ?? difference;
  return {
    differences: [{ ...asDifference(names(sides), what, record), p: answer.test?.p ?? null }],
    notes: [...answer.notes, ...(answer.test?.notes ?? [])].map(said),
  };
}

type Recorded = Pick<Difference, "estimate" | "se" | "df" | "lower" | "upper" | "method">;

/** A difference of means as an answer gives it, with the smallest that it could have shown. */
export function asDifference(of: Pick<Difference, "a" | "b">, what: string, record: Recorded): Difference {
  const { estimate: value, se, df, lower, upper, method } = record;
  const detectable = detectableFor({ se, df });
  return { ...of, kind: "difference", what, estimate: value, se, df, lower, upper, p: null, method, adjustedFor: [], detectable };
}

/** The smallest difference that an error of this size could have shown; `null` where nothing varies or df are too few. */
export function detectableFor({ se, df }: Pick<Difference, "se" | "df">): number | null {
  return se !== null && df !== null && se > 0 && df >= 1 ? smallestDetectableDifference({ se, df }).estimate : null;
}

/** Shares of two groups: risk difference, and risk ratio where it can be estimated. */
export function shares(
  rows: readonly ValueRow[],
  sides: readonly [Side, Side],
  { adjust, test }: Asked,
  covariates: readonly Covariate[],
): Compared {
  if (!hasBoth(rows)) return { differences: [], notes: [] };
  const common = {
    group: rows.map((row) => row.group),
    patient: rows.map((row) => row.person),
    between: labels,
    test,
  } as const;
  if (adjust.length > 0) {
    const answer = estimate({ situation: "adjusted", outcome: "share", values: rows.map((row) => row.value), covariates, ...common });
    const { difference, ratio } = answer.records;
    const differences = [
      entry(sides, "difference", "risk difference", difference, answer.test?.p ?? null, adjust),
      entry(sides, "ratio", "risk ratio", ratio?.ratio ? { ...ratio, ...ratio.ratio } : null, null, adjust),
    ];
    return { differences, notes: answer.notes.map(said) };
  }
  const answer = estimate({ situation: "two-shares", event: rows.map((row) => row.value), seed, ...common });
  const { difference, ratio, firth } = answer.records;
  const odds = firth?.coefficients[1];
  const differences = [
    {
      ...entry(sides, "difference", "risk difference", difference, answer.test?.p ?? null, []),
      detectable: detectableFor(cr2Difference({ values: rows.map((row) => row.value), ...common })),
    },
    entry(sides, "ratio", "risk ratio", ratio, null, []),
    // where a cell is zero no risk ratio can be had; the odds ratio with its penalty can
    ...(firth && odds ? [entry(sides, "ratio", "odds ratio", { ...exponentiated(odds), method: firth.method }, null, [])] : []),
  ];
  return { differences, notes: [...answer.notes, ...(answer.test?.notes ?? [])].map(said) };
}

/** From the scale of logarithms; its error stays there. */
function exponentiated({
  estimate: log,
  lower,
  upper,
  se,
}: {
  estimate: number;
  lower: number | null;
  upper: number | null;
  se: number | null;
}) {
  const back = (value: number | null) => (value === null ? null : Math.exp(value));
  return { estimate: Math.exp(log), lower: back(lower), upper: back(upper), se };
}

type ClassRow = { readonly place: number; readonly person: number; readonly group: "a" | "b" };

/** The heaviest classes of patients, of two groups: nothing is estimated between classes; a trend is tested when it is asked for. */
export function classes(rows: readonly ClassRow[], classCount: number, sides: readonly [Side, Side], { test }: Asked): Compared {
  if (!hasBoth(rows) || !test) return { differences: [], notes: [] };
  const answer = estimate({
    situation: "ordered-class",
    classes: rows.map(({ place }) => place),
    classCount,
    patient: rows.map(({ person }) => person),
    group: rows.map(({ group }) => group),
    seed,
    test,
  });
  const p = answer.test?.p ?? null;
  return {
    differences: [{ ...entry(sides, "difference", "trend of the heaviest class", null, p, []), method: answer.test?.method ?? "no test" }],
    notes: [...answer.notes, ...(answer.test?.notes ?? [])].map(said),
  };
}

type FirstEventRow = { readonly days: number; readonly event: 0 | 1 | 2; readonly person: number; readonly group: "a" | "b" };

/** First events of two groups, death competing: nothing is estimated between their curves; Gray's test is had with one bone a patient. */
export function firstEvents(rows: readonly FirstEventRow[], sides: readonly [Side, Side], { test }: Asked): Compared {
  if (!hasBoth(rows) || !test) return { differences: [], notes: [] };
  const answer = estimate({
    situation: "competing",
    days: rows.map(({ days }) => days),
    event: rows.map(({ event }) => event),
    causes: ["a first event", "death"],
    patient: rows.map(({ person }) => person),
    group: rows.map(({ group }) => group),
    seed,
    test,
  });
  const p = answer.test?.p ?? null;
  return {
    differences: [{ ...entry(sides, "difference", "cumulative incidence", null, p, []), method: answer.test?.method ?? "no test" }],
    notes: [...answer.notes, ...(answer.test?.notes ?? [])].map(said),
  };
}

type RateRow = { readonly events: number; readonly exposure: number; readonly person: number; readonly group: "a" | "b" };

/** Rates of two groups as their ratio. */
export function rates(
  rows: readonly RateRow[],
  sides: readonly [Side, Side],
  { adjust, test }: Asked,
  covariates: readonly Covariate[],
): Compared {
  if (!hasBoth(rows)) return { differences: [], notes: [] };
  const exposure = rows.map((row) => row.exposure);
  const common = { group: rows.map((row) => row.group), patient: rows.map((row) => row.person), between: labels, test } as const;
  const values = rows.map((row) => row.events);
  if (adjust.length > 0) {
    const { records, notes, test: tested } = estimate({ situation: "adjusted", outcome: "rate", values, exposure, covariates, ...common });
    const ratio = records.ratio?.ratio ? { ...records.ratio, ...records.ratio.ratio } : null;
    return { differences: [entry(sides, "ratio", "rate ratio", ratio, tested?.p ?? null, adjust)], notes: notes.map(said) };
  }
  const answer = estimate({ situation: "two-rates", events: values, exposure, ...common });
  return {
    differences: [
      entry(
        sides,
        "ratio",
        "rate ratio",
        answer.lead === "exact" ? answer.records.exact : answer.records.ratio,
        answer.test?.p ?? null,
        [],
      ),
    ],
    notes: answer.notes.map(said),
  };
}

type Estimated = {
  readonly estimate: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly se?: number | null;
  readonly df?: number | null;
  readonly method?: string;
};

function entry(
  sides: readonly [Side, Side],
  kind: Difference["kind"],
  what: string,
  record: Estimated | null,
  p: number | null,
  adjustedFor: readonly string[],
): Difference {
  const { estimate: value = null, lower = null, upper = null, se = null, df = null, method = "not estimable" } = record ?? {};
  return {
    ...names(sides),
    kind,
    what,
    estimate: value,
    se,
    df,
    lower,
    upper,
    p,
    method,
    adjustedFor: record ? adjustedFor : [],
    detectable: null,
  };
}

export function names(sides: readonly [Side, Side]): { readonly a: string; readonly b: string } {
  return { a: sides[0].label, b: sides[1].label };
}

export function hasBoth(rows: readonly { readonly group: "a" | "b" }[]): boolean {
  return rows.some(({ group }) => group === "a") && rows.some(({ group }) => group === "b");
}

export function once(notes: readonly Note[]): readonly Note[] {
  return notes.filter((note, i) => notes.findIndex((other) => other.code === note.code && other.text === note.text) === i);
}
