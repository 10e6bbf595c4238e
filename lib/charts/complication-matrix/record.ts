import type { FigureSource, GroupCounts, NoteForFigure, ShareForFigure } from "../figure/source";
import type { CountedOf } from "../say/shown-estimate";

/** Events by type and class, by group, with the share of segments (or patients) that had each type. */
export type ComplicationMatrixRecord = FigureSource & {
  /** The scheme in words. */
  readonly scheme: string;
  /** Its classes, lightest first. */
  readonly classes: readonly { readonly id: string; readonly label: string }[];
  /** Of what the shares are; of segments unless told. */
  readonly of?: CountedOf;
  readonly groups: readonly ComplicationMatrixGroup[];
};

export type ComplicationMatrixGroup = GroupCounts & {
  /** Whose events were looked for: segments (or patients) = n + Σ excluded. */
  readonly n: number;
  readonly any: ShareForFigure;
  /** In any order: types of one origin are drawn together, origins in the order in which they first come. */
  readonly rows: readonly ComplicationRow[];
  readonly notes?: readonly NoteForFigure[];
};

export type ComplicationRow = {
  readonly type: string;
  readonly origin: string;
  /** Events by class id; a class that is not there has none. */
  readonly counts: Readonly<Record<string, number>>;
  readonly share: ShareForFigure;
};

export function eventsIn({ counts }: ComplicationRow): number {
  return Object.values(counts).reduce((sum, n) => sum + n, 0);
}

/** Types of one origin together; origins, and types within, in the order in which they come. */
export function byOrigin(rows: readonly ComplicationRow[]): readonly ComplicationRow[] {
  const origins = [...new Set(rows.map(({ origin }) => origin))];
  return origins.flatMap((origin) => rows.filter((row) => row.origin === origin));
}
