import { type CaptionOptions, type DataTable, drawSvg, type Figure, type FigureOptions, figureCsv } from "@/lib/charts";

/** A figure with its record inside: whoever shows it says only how wide, and in which unit. */
export type Drawable = {
  readonly id: string;
  readonly units: readonly string[];
  readonly svg: (options: FigureOptions) => string;
  readonly caption: (options: CaptionOptions) => string;
  readonly table: (unit?: string) => DataTable;
  readonly csv: (unit?: string) => string;
};

export function drawable<Record>(figure: Figure<Record>, record: Record): Drawable {
  const table = (unit?: string) => figure.table(record, unit);
  return {
    id: figure.id,
    units: figure.units(record),
    svg: (options) => drawSvg(figure.layout(record, options)),
    caption: (options) => figure.caption(record, options),
    table,
    csv: (unit) => figureCsv(table(unit)),
  };
}
