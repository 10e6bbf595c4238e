import type { Estimated, FigureSource, GroupCounts, NoteForFigure } from "../figure/source";
import type { CountedOf } from "../say/shown-estimate";

/** Any number measure by group. An answer of such a measure is one, as it stands. */
export type DistributionRecord = FigureSource & {
  /** Unit of the values as the record holds them: mm, days, days/cm, mm/day, %, deg, ratio, z, centile … */
  readonly unit: string;
  /** Of whom the measure is; without it the rows tell: those of a person have no segment. */
  readonly of?: CountedOf;
  /** A norm or tolerance, in the unit of the record, drawn as a light band. */
  readonly band?: { readonly from: number; readonly to: number; readonly label: string };
  readonly groups: readonly DistributionGroup[];
};

export type DistributionGroup = GroupCounts & {
  /** `segments` (of a person's measure: `patients`) = n + Σ excluded. */
  readonly n: number;
  readonly mean?: Estimated;
  readonly median?: { readonly estimate: number | null };
  readonly quartiles?: { readonly lower: number | null; readonly upper: number | null };
  readonly rows?: readonly DistributionRow[];
  readonly notes?: readonly NoteForFigure[];
};

export type DistributionRow = { readonly person: number; readonly segment: number | null; readonly value: number };

/** Whether n counts segments or persons. */
export function countedOf({ of, groups }: DistributionRecord): CountedOf {
  if (of !== undefined) return of;
  const [first] = groups.flatMap(({ rows = [] }) => rows.slice(0, 1));
  return first !== undefined && first.segment === null ? "person" : "segment";
}

/** Whether a group has patients enough for an interval; without one, values stand alone. */
export function hasInterval({ mean = noMean }: DistributionGroup): boolean {
  return mean.lower !== null;
}

export const noMean: Estimated = { estimate: null, lower: null, upper: null, n: 0, patients: 0 };
