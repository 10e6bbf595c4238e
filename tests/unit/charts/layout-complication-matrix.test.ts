import { expect, test } from "vitest";
import {
  type ComplicationMatrixGroup,
  type ComplicationMatrixRecord,
  type ComplicationRow,
  complicationMatrixFigure,
  type ShareForFigure,
} from "@/lib/charts";
import { figureCases, inventedSource, labelsIn, textsIn } from "./figure-cases";
import { invented } from "./invented";

const classes = ["i", "ii", "iiia", "iiib"].map((id) => ({ id, label: id }));
const types: readonly (readonly [origin: string, type: string])[] = [
  ["Soft tissue", "Pin-site infection"],
  ["Soft tissue", "Wound breakdown"],
  ["Joint", "Knee flexion contracture"],
  ["Joint", "Equinus contracture needing release of the tendon"],
  ["Bone", "Premature consolidation"],
  ["Bone", "Delayed consolidation"],
  ["Neurological", "Sensory deficit"],
  ["Device", "Nail stopped or broke"],
];

function share(x: number, n: number): ShareForFigure {
  const p = n === 0 ? null : x / n;
  return {
    x,
    n,
    patients: Math.ceil(n / 1.6),
    estimate: p,
    lower: p === null ? null : p * 0.6,
    upper: p === null ? null : Math.min(1, p * 1.4 + 0.03),
  };
}

function rows(n: number, ids: readonly string[], seed = 4): ComplicationRow[] {
  const next = invented(seed);
  return types.map(([origin, type], at) => {
    const counts = Object.fromEntries(
      ids.map((id, place) => [id, Math.floor(next() ** 3 * n * 0.3 * Math.exp(-place * 0.5)) * (at === 5 ? 0 : 1)]),
    );
    const events = Object.values(counts).reduce((a, b) => a + b, 0);
    return { origin, type, counts, share: share(Math.min(n, Math.ceil(events * 0.8)), n) };
  });
}

function group(
  label: string,
  n: number,
  own: readonly ComplicationRow[],
  more: Partial<ComplicationMatrixGroup> = {},
): ComplicationMatrixGroup {
  const notLooked = n === 0 ? 5 : 4;
  return {
    label,
    segments: n + notLooked,
    patients: Math.ceil(n / 1.6) + 3,
    n,
    excluded: { "not-looked-for": notLooked },
    any: share(Math.round(n * 0.42), n),
    rows: own,
    ...more,
  };
}

const record = (groups: readonly ComplicationMatrixGroup[], more: Partial<ComplicationMatrixRecord> = {}): ComplicationMatrixRecord => ({
  ...inventedSource,
  definition: {
    title: "Complications",
    sentence: "events up to the later of consolidation and full weight bearing, planned operations apart",
  },
  by: groups.length > 1 ? ["device"] : [],
  scheme: "severity in four classes",
  classes,
  groups,
  ...more,
});

const ids = classes.map(({ id }) => id);
const nine = ["ia", "ib", "ic", "iia", "iib", "iic", "iiia", "iiib", "iiic"].map((id) => ({ id, label: id }));
const words = [
  { id: "problem", label: "problem" },
  { id: "obstacle", label: "obstacle" },
  { id: "complication-minor", label: "complication, minor" },
  { id: "complication-major", label: "complication, major" },
];

const records: Readonly<Record<string, ComplicationMatrixRecord>> = {
  "one-group": record([group("All segments", 98, rows(98, ids))]),
  "two-groups-and-an-empty-one": record(
    [
      group(
        "Magnetic nail",
        140,
        rows(
          140,
          words.map(({ id }) => id),
          6,
        ),
      ),
      group(
        "Circular fixator",
        60,
        rows(
          60,
          words.map(({ id }) => id),
          7,
        ),
      ),
      group("Plate", 0, []),
    ],
    { classes: words, scheme: "problem, obstacle, complication" },
  ),
  "nine-classes": record(
    [
      group(
        "All segments",
        1200,
        rows(
          1200,
          nine.map(({ id }) => id),
        ),
      ),
    ],
    { classes: nine, scheme: "related to the device, in nine classes" },
  ),
  "twelve-segments": record([group("All segments", 12, rows(12, ids))]),
  "one-patient": record(
    [
      group("All patients", 1, [{ origin: "Joint", type: "Knee flexion contracture", counts: { i: 1 }, share: share(1, 1) }], {
        patients: 1,
        segments: 2,
        excluded: {},
        any: { ...share(1, 1), lower: null, upper: null },
      }),
    ],
    { of: "person" },
  ),
  nothing: record([]),
};

figureCases(complicationMatrixFigure, records, {
  unpictured: { "5 000 segments": record([group("All segments", 5000, rows(5000, ids))]) },
});

test("every event is in a cell, and the cells of a row add up to its sum", () => {
  const own = rows(98, ids);
  const scene = complicationMatrixFigure.layout(record([group("All", 98, own)]));
  const cells = labelsIn(scene)
    .flatMap((label) => /: (\d+) events?$/.exec(label)?.[1] ?? [])
    .map(Number);
  const all = own.flatMap(({ counts }) => Object.values(counts));
  expect(cells.sort()).toEqual(all.filter((n) => n > 0).sort());
  const table = complicationMatrixFigure.table(record([group("All", 98, own)]));
  for (const row of table.rows) expect(row.slice(3, 7).reduce((sum, cell) => sum + Number(cell), 0)).toBe(Number(row[7]));
});

test("a bar is as long as its number", () => {
  const own: ComplicationRow[] = [{ origin: "Joint", type: "Stiffness", counts: { i: 16, ii: 4, iiia: 1 }, share: share(20, 98) }];
  const lengths = complicationMatrixFigure
    .layout(record([group("All", 98, own)]))
    .marks.flatMap((mark) => (mark.mark === "band" && mark.label ? [mark.width] : []));
  expect(lengths.map((length) => length / (lengths[2] ?? 1)).map((times) => times.toFixed(6))).toEqual([
    "16.000000",
    "4.000000",
    "1.000000",
  ]);
});

test("a share is said with its numerator and denominator", () => {
  const scene = complicationMatrixFigure.layout(
    record([
      group("All", 40, [
        {
          origin: "Joint",
          type: "Stiffness",
          counts: { i: 3 },
          share: { x: 3, n: 40, patients: 31, estimate: 0.075, lower: 0.026, upper: 0.2 },
        },
      ]),
    ]),
  );
  expect(labelsIn(scene)).toContain("Stiffness, share of segments: 3 of 40, 7.5 % (95 % CI 2.6 to 20)");
  expect(textsIn(scene)).toContain("7.5 %");
});

test("a group of few patients doesn't set the axis: its interval runs to the end of it, its share is still heard, and the caption says so", () => {
  const row = (own: ShareForFigure): ComplicationRow => ({ origin: "Joint", type: "Stiffness", counts: { i: own.x }, share: own });
  const large = group("Femur", 200, [row({ x: 20, n: 200, patients: 130, estimate: 0.1, lower: 0.06, upper: 0.17 })]);
  const small = group("Forearm", 3, [row({ x: 3, n: 3, patients: 3, estimate: 1, lower: 0.44, upper: 1 })]);
  const axisOf = (groups: readonly ComplicationMatrixGroup[]) =>
    Math.max(
      ...textsIn(complicationMatrixFigure.layout(record(groups)))
        .filter((text) => /^\d+$/.test(text))
        .map(Number),
    );
  const both = record([large, small]);
  expect(axisOf([large, { ...small, rows: [] }])).toBe(20);
  expect(axisOf([large, small])).toBe(20);
  expect(axisOf([small])).toBe(100);
  expect(labelsIn(complicationMatrixFigure.layout(both))).toContain(
    "Forearm: Stiffness, share of segments: 3 of 3, 100 % (95 % CI 44 to 100)",
  );
  expect(complicationMatrixFigure.caption(both)).toContain("runs beyond it has no bracket there");
  expect(complicationMatrixFigure.caption(record([large]))).not.toContain("runs beyond it");
});

test("events that nobody looked for are not none: no matrix, and the reason", () => {
  const texts = textsIn(complicationMatrixFigure.layout(record([group("Plate", 0, [])])));
  expect(texts).toEqual(["Plate", "5 segments in 3 patients: 0 looked for, 5 left out (5 not looked for)", "events not looked for"]);
});

test("types of one origin stand together, in whatever order they come", () => {
  const one = (origin: string, type: string): ComplicationRow => ({ origin, type, counts: { i: 1 }, share: share(1, 40) });
  const mixed = [one("Bone", "Nonunion"), one("Joint", "Stiffness"), one("Bone", "Fracture")];
  const texts = textsIn(complicationMatrixFigure.layout(record([group("All", 40, mixed)])));
  expect(texts.filter((text) => ["Bone", "Joint", "Nonunion", "Stiffness", "Fracture"].includes(text))).toEqual([
    "Bone",
    "Nonunion",
    "Fracture",
    "Joint",
    "Stiffness",
  ]);
});
