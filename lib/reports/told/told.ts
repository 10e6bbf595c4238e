import type { DataTable } from "@/lib/charts";
import type { Drawable } from "./drawable";

export type ToldTable = { readonly caption: string; readonly table: DataTable };
/** Something left out of a group, and why. */
export type LeftOut = { readonly label: string; readonly text: string };
/** A result reference, with what it is of where a place shows several results. */
export type Reference = { readonly stamp: string; readonly of: string };

/** A place of Outcomes, told: sentences, figures and tables of the same records, and how they were worked out. */
export type Told = {
  readonly title: string;
  /** The first answers the question; the others say what belongs to it. */
  readonly sentences: readonly string[];
  /** Cautions without which the answer would mislead: they stand beside it. */
  readonly cautions: readonly string[];
  readonly figures: readonly Drawable[];
  readonly tables: readonly ToldTable[];
  readonly definition: string;
  readonly method: string;
  readonly leftOut: readonly LeftOut[];
  readonly notes: readonly string[];
  readonly references: readonly Reference[];
  /** The same at the command line, without `npm run -s lengthbook --`. */
  readonly commands: readonly string[];
  readonly batch: number;
  readonly dataTo: string | null;
};
