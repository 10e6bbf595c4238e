import { type CaptionOptions, type DataTable, drawSvg, type Figure, type FigureOptions, figureCsv, once } from "@/lib/charts";

/** A figure with its record inside: whoever shows it says only how wide, and in which unit. */
export type Drawable = {
  readonly id: string;
  readonly units: readonly string[];
  readonly svg: (options: FigureOptions) => string;
  readonly caption: (options: CaptionOptions) => string;
  readonly table: (unit?: string) => DataTable;
  readonly csv: (unit?: string) => string;
};

/** Drawings of a record, as long as the record is kept. */
const drawingsOf = once((_record: object) => new Map<string, string>());

export function drawable<Record extends object>(figure: Figure<Record>, record: Record): Drawable {
  const table = (unit?: string) => figure.table(record, unit);
  return {
    id: figure.id,
    units: figure.units(record),
    svg: (options) => {
      const drawings = drawingsOf(record);
      const id = `${figure.id} ${options.width} ${options.unit}`;
      const svg = drawings.get(id) ?? drawSvg(figure.layout(record, options));
      drawings.set(id, svg);
      return svg;
    },
    caption: (options) => figure.caption(record, options),
    table,
    csv: (unit) => figureCsv(table(unit)),
  };
}
