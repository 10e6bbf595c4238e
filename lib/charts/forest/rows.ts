import type { Axis } from "../axis/axis";
import { wrapText } from "../place/text-width";
import { howMany, shownLimits } from "../say/shown-estimate";
import type { ShownUnit } from "../say/shown-unit";
import type { Mark } from "../scene";
import { layBracket } from "../summary/lay-bracket";
import type { ForestRecord, ForestRow } from "./record";

export type Columns = {
  readonly wide: boolean;
  readonly width: number;
  readonly labelWidth: number;
  readonly left: number;
  readonly right: number;
};

const sizes = { label: 13.5, small: 12.5 } as const;
const linePx = 17;

type Placed = { readonly marks: readonly Mark[]; readonly end: number };

export function headingRow(heading: string, y: number): Placed {
  return { marks: [{ mark: "text", x: 0, y: y + 20, text: heading, ink: "ink", size: 14, weight: "bold" }], end: y + 26 };
}

/** `−3.1 days (95 % CI −6.2 to 0.1)`, or that there is no estimate. */
export function estimateOf(row: ForestRow, unit: ShownUnit): string {
  return row.estimate === null ? "no estimate" : shownLimits(row, unit);
}

/** What a reader hears of a row. */
export function rowText(row: ForestRow, record: ForestRecord, unit: ShownUnit): string {
  const words = `${row.label}: ${estimateOf(row, unit)}; ${howMany(row, record.of)}`;
  return `${words}${row.tested ? "" : ", not tested"}${row.detail === undefined ? "" : `; ${row.detail}`}`;
}

/** A row: its label, how many, the estimate between its brackets, and its numbers; on a phone the last under the label. */
export function forestRow(
  row: ForestRow,
  record: ForestRecord,
  view: { unit: ShownUnit; axis: Axis; columns: Columns; y: number },
): Placed {
  const { unit, axis, columns, y } = view;
  const words = wordsOf(row, record, unit, columns);
  const texts = words.map(
    ({ text, small }, line): Mark => ({
      mark: "text",
      x: 0,
      y: y + 14 + line * linePx,
      text,
      ink: small ? "muted" : "ink",
      size: small ? sizes.small : sizes.label,
    }),
  );
  const below = y + words.length * linePx + 4;
  const middle = columns.wide ? y + 10 : below + 8;
  const edges = [columns.left - 4, columns.right + 4] as const;
  const bracket = layBracket(row, axis.at, {
    y: middle,
    edges,
    label: rowText(row, record, unit),
    size: 4.4,
    ...(row.tested ? {} : { hollow: true }),
  });
  const numbers = columns.wide ? numberMarks(row, unit, columns, y) : [];
  return { marks: [...texts, ...bracket, ...numbers], end: columns.wide ? below + 4 : row.estimate === null ? below + 4 : middle + 14 };
}

function numberMarks(row: ForestRow, unit: ShownUnit, { width }: Columns, y: number): Mark[] {
  return [{ mark: "text", x: width, y: y + 14, text: estimateOf(row, unit), ink: "ink", size: sizes.small, anchor: "end" }];
}

function wordsOf(row: ForestRow, record: ForestRecord, unit: ShownUnit, { wide, labelWidth }: Columns) {
  const small = [...(wide ? [] : [estimateOf(row, unit)]), `${howMany(row, record.of)}${row.tested ? "" : ", not tested"}`];
  return [
    ...wrapText(row.label, sizes.label, labelWidth).map((text) => ({ text, small: false })),
    ...[...small, ...(row.detail === undefined ? [] : [row.detail])]
      .flatMap((line) => wrapText(line, sizes.small, labelWidth))
      .map((text) => ({ text, small: true })),
  ];
}
