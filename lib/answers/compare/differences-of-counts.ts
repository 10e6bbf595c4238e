import { type Covariate, cr2Difference, estimate, type TestAnswer } from "@/lib/stats";
import { seed } from "../healing/median-interval";
import { said } from "../healing/said";
import { type Asked, type Compared, detectableFor, entry, hasBoth, labels, type ValueRow } from "./differences";
import type { Side } from "./sides";

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

type Tested = { readonly test: TestAnswer | null; readonly notes: readonly Parameters<typeof said>[0][] };

/** A test with its p and no estimate. */
function testAlone(sides: readonly [Side, Side], what: string, { test, notes }: Tested): Compared {
  return {
    differences: [{ ...entry(sides, "difference", what, null, test?.p ?? null, []), method: test?.method ?? "no test" }],
    notes: [...notes, ...(test?.notes ?? [])].map(said),
  };
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
  return testAlone(sides, "trend of the heaviest class", answer);
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
  return testAlone(sides, "cumulative incidence", answer);
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
