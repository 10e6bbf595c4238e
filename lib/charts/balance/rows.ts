import type { Axis } from "../axis/axis";
import { wrapText } from "../place/text-width";
import { counted, countedIn, decimals, grouped } from "../say/numbers";
import type { Mark } from "../scene";
import { type BalanceRecord, type BalanceRow, isUnlike, sorted } from "./record";

export type Columns = {
  readonly wide: boolean;
  readonly width: number;
  readonly labelWidth: number;
  readonly left: number;
  readonly right: number;
  readonly valuesX: number;
};

const sizes = { label: 13.5, small: 12.5 } as const;
const linePx = 17;

export function titleOfBalance({ groups: [first, second] }: Pick<BalanceRecord, "groups">): string {
  return `Case-mix balance: ${first.label} and ${second.label}`;
}

/** The size as written; a difference of codes has no sign. */
export function sizeText({ smd }: BalanceRow): string {
  return smd === null ? "not given" : decimals(Math.abs(smd), 2);
}

/** What a reader hears of a field: `Age: 0.31, above 0.2; Nail 34 years (SD 12), Frame 29 years (SD 11); recorded 80 and 41`. */
export function rowText(row: BalanceRow, record: BalanceRecord): string {
  const size = row.smd === null ? "no difference can be given" : `${sizeText(row)}${isUnlike(row) ? ", unlike" : ""}`;
  return [`${row.label}: ${size}`, ...valueTexts(row, record), recordedText(row)].join("; ");
}

function valueTexts({ values }: BalanceRow, { groups }: BalanceRecord): string[] {
  return values === undefined ? [] : values.map((value, index) => `${groups[index]?.label ?? ""} ${value}`);
}

function recordedText({ recorded: [first, second] }: BalanceRow): string {
  return `recorded in ${grouped(first)} and ${grouped(second)}`;
}

/** A field: a thin stem from nothing to its mark; beside it (on a phone between label and mark) what each group is like. */
export function balanceRow(row: BalanceRow, record: BalanceRecord, view: { axis: Axis; columns: Columns; y: number }) {
  const { axis, columns, y } = view;
  const small = [...valueTexts(row, record), recordedText(row)];
  const room = columns.wide ? columns.width - columns.valuesX : columns.width;
  const side = small.flatMap((line) => wrapText(line, sizes.small, room));
  const label = wrapText(row.label, sizes.label, columns.labelWidth);
  const top = columns.wide ? y : y + label.length * linePx;
  const texts = [
    ...label.map((text, line): Mark => ({ mark: "text", x: 0, y: y + 14 + line * linePx, text, ink: "ink", size: sizes.label })),
    ...side.map(
      (text, line): Mark => ({ mark: "text", x: columns.valuesX, y: top + 14 + line * linePx, text, ink: "muted", size: sizes.small }),
    ),
  ];
  const textEnd = Math.max(y + label.length * linePx, top + side.length * linePx) + 4;
  const end = columns.wide ? textEnd + 4 : row.smd === null ? textEnd : textEnd + 20;
  const middle = columns.wide ? y + 10 : textEnd + 10;
  return { marks: [...texts, ...pointMarks(row, record, { axis, columns, middle, y })], end };
}

type Spot = { readonly axis: Axis; readonly columns: Columns; readonly middle: number; readonly y: number };

function pointMarks(row: BalanceRow, record: BalanceRecord, { axis, columns, middle, y }: Spot): Mark[] {
  const numberX = columns.wide ? columns.left - 6 : columns.width;
  const number: Mark = { mark: "text", x: numberX, y: y + 14, text: sizeText(row), ink: "ink", size: 13, anchor: "end" };
  if (row.smd === null) return [{ ...number, ink: "muted" }];
  const x = axis.at(Math.abs(row.smd));
  const shape = isUnlike(row) ? ({ shape: "square", ink: "series2" } as const) : ({ shape: "disc", ink: "series1" } as const);
  return [
    number,
    { mark: "rule", x1: axis.at(0), x2: x, y1: middle, y2: middle, ink: "muted", weight: 1 },
    { mark: "symbol", x, y: middle, size: 4.6, label: rowText(row, record), ...shape },
  ];
}

export function groupsText({ groups }: BalanceRecord): string {
  return groups.map(({ label, segments, patients }) => `${label} ${countedIn(segments, patients)}`).join("; ");
}

export function describe(record: BalanceRecord): string {
  const unlike = record.rows.filter(isUnlike).length;
  const rows = sorted(record.rows).map((row) => `${rowText(row, record)}.`);
  return `Standardised differences of ${counted(record.rows.length, "field")}, ${unlike} of them unlike. ${groupsText(record)}. ${rows.join(" ")}`;
}
