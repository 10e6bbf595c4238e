import type { Scene } from "../scene";
import type { DataTable } from "../table/data-table";

/** `width` px; `unit` is one of the figure's `units` and changes only what is shown. */
export type FigureOptions = { readonly width?: number; readonly unit?: string };
export type CaptionOptions = {
  readonly unit?: string;
  /** The cohort in words. */
  readonly cohort?: string;
  /** Whether marks were drawn together, without their names. */
  readonly crowded?: boolean;
};

/** One kind of figure, complete: whoever holds its record gets drawing, caption, table and the units between which a reader can choose. */
export type Figure<Record> = {
  readonly id: string;
  /** Pure: the scene's title and description are the accessible name and text. */
  readonly layout: (record: Record, options?: FigureOptions) => Scene;
  readonly caption: (record: Record, options?: CaptionOptions) => string;
  readonly table: (record: Record, unit?: string) => DataTable;
  /** The unit shown unless told first; one unit alone: no toggle. */
  readonly units: (record: Record) => readonly string[];
};

export const usualWidthPx = 880;
const leastWidthPx = 240;
/** Below this width a figure is laid for a phone: groups one under the other, words wrapped. */
const wideFromPx = 560;

/** @throws RangeError when the width is below 240 px, where words no longer fit */
export function requireWidth(figure: string, width: number): void {
  if (!(width >= leastWidthPx)) throw new RangeError(`${figure} requires a width of at least ${leastWidthPx} px, received ${width}`);
}

export function isWide(width: number): boolean {
  return width >= wideFromPx;
}
