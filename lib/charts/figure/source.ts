/** What every figure's record holds beside its numbers: whatever is stamped so can be drawn. Structural, so that answers need no wrapping. */
export type FigureSource = {
  readonly definition: { readonly title: string; readonly sentence: string };
  readonly batch: number;
  readonly stamp: string;
  readonly dataTo: string | null;
  readonly by?: readonly string[];
  readonly notes?: readonly NoteForFigure[];
};

export type NoteForFigure = { readonly code: string; readonly text: string };
export type Limits = { readonly estimate: number | null; readonly lower: number | null; readonly upper: number | null };
export type Estimated = Limits & { readonly n: number; readonly patients: number };
/** A share with its counts: x of n, of which the interval allows for several segments a patient. */
export type ShareForFigure = Limits & { readonly x: number; readonly n: number; readonly patients: number };

/** The counts that stand over every group: `segments` (of a person's measure: `patients`) = n + Σ excluded. */
export type GroupCounts = {
  readonly label: string;
  readonly segments: number;
  readonly patients: number;
  readonly excluded: Readonly<Record<string, number>>;
};

/** Σ excluded. */
export function excludedIn({ excluded }: Pick<GroupCounts, "excluded">): number {
  return Object.values(excluded).reduce((sum, n) => sum + n, 0);
}
