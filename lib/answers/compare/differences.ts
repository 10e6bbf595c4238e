import { estimate, smallestDetectableDifference } from "@/lib/stats";
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

/** Values of two groups as columns; `gainMm` of an index, NaN where there is none. */
export type Values = {
  readonly value: readonly number[];
  readonly person: readonly number[];
  readonly group: readonly ("a" | "b")[];
  readonly gainMm?: readonly number[];
};

export type ValueRow = { readonly value: number; readonly person: number; readonly group: "a" | "b" };

/** Means of two groups; patients in both are compared within themselves. */
export function means(
  { value: values, person: patient, group, gainMm }: Values,
  sides: readonly [Side, Side],
  { what, test }: { readonly what: string; readonly test: boolean },
): Compared {
  if (!group.includes("a") || !group.includes("b")) return { differences: [], notes: [] };
  const answer = estimate({
    situation: "two-means",
    values,
    group,
    patient,
    between: labels,
    ...(gainMm === undefined ? {} : { gains: gainMm.map((gain) => (Number.isNaN(gain) ? 0 : gain)) }),
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

type Estimated = {
  readonly estimate: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly se?: number | null;
  readonly df?: number | null;
  readonly method?: string;
};

/** A difference from whatever record an answer has; none where it couldn't be estimated. */
export function entry(
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
