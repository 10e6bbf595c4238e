import { expect, test } from "vitest";
import { type BalanceRecord, type BalanceRow, balanceFigure } from "@/lib/charts";
import { figureCases, inventedSource, labelsIn } from "./figure-cases";

const rows: readonly BalanceRow[] = [
  { label: "Age at surgery", smd: -0.12, recorded: [118, 71], values: ["24.1 years (SD 9.2)", "25.3 years (SD 10.4)"] },
  { label: "Planned gain", smd: 0.64, recorded: [112, 69], values: ["58 mm (SD 14)", "49 mm (SD 15)"] },
  { label: "Smoking", smd: 0.2, recorded: [80, 44] },
  { label: "Indication for the lengthening of the bone", smd: 0.37, recorded: [118, 71], values: ["61 % stature", "44 % stature"] },
  { label: "Growth plates", smd: null, recorded: [118, 71] },
  { label: "Vitamin D deficiency", smd: null, recorded: [0, 12] },
];

const record = (own: readonly BalanceRow[]): BalanceRecord => ({
  ...inventedSource,
  definition: { title: "Case-mix balance", sentence: "what was there before the operation" },
  groups: [
    { label: "Magnetic nail", segments: 118, patients: 73 },
    { label: "Circular fixator", segments: 71, patients: 49 },
  ],
  rows: own,
});

const records: Readonly<Record<string, BalanceRecord>> = {
  "six-fields": record(rows),
  "far-apart": record([
    { label: "Device", smd: 3.1, recorded: [12, 12] },
    { label: "Sex", smd: 0.05, recorded: [12, 12] },
  ]),
  "one-patient": {
    ...record([{ label: "Age at surgery", smd: null, recorded: [1, 1] }]),
    groups: [
      { label: "A", segments: 1, patients: 1 },
      { label: "B", segments: 1, patients: 1 },
    ],
  },
  nothing: record([]),
};

figureCases(balanceFigure, records, {
  unpictured: {
    "5 000 segments": {
      ...record(rows),
      groups: [
        { label: "A", segments: 2500, patients: 1800 },
        { label: "B", segments: 2500, patients: 1700 },
      ],
    },
    "forty fields": record(
      Array.from({ length: 40 }, (_, i) => ({ label: `Field ${i}`, smd: Math.sin(i) / 2, recorded: [10, 12] as const })),
    ),
  },
});

test("largest first, those without a difference last and named", () => {
  const table = balanceFigure.table(record(rows));
  expect(table.rows.map(([label]) => label)).toEqual([
    "Planned gain",
    "Indication for the lengthening of the bone",
    "Smoking",
    "Age at surgery",
    "Growth plates",
    "Vitamin D deficiency",
  ]);
  expect(labelsIn(balanceFigure.layout(record(rows)))).toHaveLength(4);
});

test("above 0.2 a mark is a square, at 0.2 it is not yet", () => {
  const shapes = balanceFigure
    .layout(record(rows))
    .marks.flatMap((mark) => (mark.mark === "symbol" && mark.label ? [[mark.label.split(":")[0], mark.shape]] : []));
  expect(shapes).toEqual([
    ["Planned gain", "square"],
    ["Indication for the lengthening of the bone", "square"],
    ["Smoking", "disc"],
    ["Age at surgery", "disc"],
  ]);
});
