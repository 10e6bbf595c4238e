import { expect, test } from "vitest";
import { type DaysAgainstGainGroup, type DaysAgainstGainRecord, daysAgainstGainFigure } from "@/lib/charts";
import { allText, figureCases, inventedSource, labelsIn, textsIn } from "./figure-cases";
import { invented } from "./invented";

/** Invented segments on one line, days = 40 + 22 · cm, with gains about a middle. */
function marksAbout(n: number, { middleMm = 50, seed = 4 } = {}): DaysAgainstGainGroup["marks"] {
  const next = invented(seed);
  return Array.from({ length: n }, (_, index) => {
    const gainMm = Math.max(12, Math.round(middleMm + (next() + next() + next() - 1.5) * 30));
    const days = Math.round((40 + 2.2 * gainMm) * Math.exp((next() + next() - 1) * 0.35));
    const kind = next();
    const status = kind < 0.9 ? "healed" : kind < 0.93 ? "rescued" : "not-healed-at-last-film";
    return { segment: index + 1, status, rescued: kind > 0.85 && kind < 0.9, gainMm, days };
  });
}

function group(label: string, marks: DaysAgainstGainGroup["marks"], more: Partial<DaysAgainstGainGroup> = {}): DaysAgainstGainGroup {
  const healed = marks.filter(({ status }) => status === "healed").length;
  return {
    label,
    segments: marks.length + 2,
    patients: Math.ceil(marks.length / 2) + 1,
    healed,
    censored: marks.length - healed,
    ended: 0,
    rescued: marks.filter(({ rescued }) => rescued).length,
    excluded: { "healing-date-missing": 2 },
    line: {
      fixedDays: { estimate: 40.3, lower: 18.2, upper: 62.4 },
      daysPerCm: { estimate: 21.9, lower: 17.6, upper: 26.2 },
      n: healed,
      patients: Math.ceil(healed / 2),
    },
    daysAtMedianGain: { gainMm: 51, days: 152, lower: 143, upper: 162 },
    marks,
    ...more,
  };
}

const record = (groups: readonly DaysAgainstGainGroup[], more: Partial<DaysAgainstGainRecord> = {}): DaysAgainstGainRecord => ({
  ...inventedSource,
  definition: { title: "Surgery to consolidation", sentence: "days from surgery to consolidation on film, healing however obtained" },
  by: groups.length > 1 ? ["device"] : [],
  groups,
  ...more,
});

const short = group("Nail", marksAbout(120, { middleMm: 36 }));
const long = group("Frame", marksAbout(90, { middleMm: 68, seed: 8 }));
const empty = group("Plate", [], { segments: 2, patients: 2, line: null, daysAtMedianGain: null });
const said = "At equal gain no difference between nail and frame is shown: ratio of days 1.02 (95 % CI 0.93 to 1.12).";

const records: Readonly<Record<string, DaysAgainstGainRecord>> = {
  "two-groups-on-one-line-and-an-empty-one": record([short, long, empty], { said }),
  "twelve-segments": record([group("All segments", marksAbout(12))]),
  "one-patient": record([
    group("All segments", marksAbout(2), { patients: 1, segments: 2, excluded: {}, line: null, daysAtMedianGain: null }),
  ]),
  "one-very-long": record([
    group("All segments", [...marksAbout(60), { segment: 99, status: "healed", rescued: true, gainMm: 44, days: 1200 }]),
  ]),
  "six-groups": record(
    ["Q1", "Q2", "Q3", "Q4", "Q5", "Quarter with a very long name that does not fit"].map((label, i) =>
      group(label, marksAbout(30, { seed: i + 2, middleMm: 30 + i * 8 })),
    ),
  ),
  "no-marks": record([empty]),
  nothing: record([]),
};

figureCases(daysAgainstGainFigure, records, {
  unpictured: { "5 000 segments": record([group("Nail", marksAbout(2500)), group("Frame", marksAbout(2500, { seed: 12 }))]) },
});

test.each([12, 480, 5000])("each of %i segments is a mark that says its days and gain", (n) => {
  const marks = marksAbout(n);
  const said = labelsIn(daysAgainstGainFigure.layout(record([group("All", marks)]))).filter((label) => label.includes(" gained, "));
  const written = marks.map(
    ({ status, days, gainMm }) => `${status === "healed" ? "" : "more than "}${days} days, ${((gainMm ?? 0) / 10).toFixed(1)} cm gained`,
  );
  expect(said.map((label) => `${label.split(" gained")[0]} gained`).sort()).toEqual(written.sort());
});

test("the line's numbers are printed as the record holds them, in days and in months", () => {
  const days = textsIn(daysAgainstGainFigure.layout(record([short])));
  expect(days).toContain("days = 40.3 + 21.9 · cm");
  expect(allText(daysAgainstGainFigure.layout(record([short])))).toContain(
    "fixed days 95 % CI 18.2 to 62.4; per further cm 95 % CI 17.6 to 26.2",
  );
  expect(days).toContain("at 5.1 cm: 152.0 days (95 % CI 143.0 to 162.0)");
  // 40.3 / 30.4375 and 21.9 / 30.4375
  expect(textsIn(daysAgainstGainFigure.layout(record([short]), { unit: "months" }))).toContain("months = 1.3 + 0.72 · cm");
});

test("a drawn line passes where its equation says", () => {
  const scene = daysAgainstGainFigure.layout(record([short]));
  const tick = (text: string, axis: "x" | "y") => {
    const found = scene.marks.find(
      (mark) => mark.mark === "text" && Number(mark.text) === Number(text) && mark.anchor === (axis === "x" ? "middle" : "end"),
    );
    if (found?.mark !== "text") throw new RangeError(`no tick ${text}`);
    return axis === "x" ? found.x : found.y - 13 * 0.34;
  };
  const perCm = tick("4", "x") - tick("2", "x");
  const perDay = (tick("0", "y") - tick("60", "y")) / 60;
  const line = scene.marks.find((mark) => mark.mark === "path" && mark.weight === 2);
  const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = line?.mark === "path" ? [...line.d.matchAll(/-?[\d.]+/g)].map(Number) : [];
  const cm = (x: number) => ((x - tick("2", "x")) / perCm) * 2 + 2;
  const days = (y: number) => (tick("0", "y") - y) / perDay;
  expect(days(y1)).toBeCloseTo(40.3 + 21.9 * cm(x1), 6);
  expect(days(y2)).toBeCloseTo(40.3 + 21.9 * cm(x2), 6);
});

test("what the comparison says stands on the figure, in its description and in its caption", () => {
  const scene = daysAgainstGainFigure.layout(record([short, long], { said }));
  expect(allText(scene)).toContain(said);
  expect(scene.description).toContain(said);
  expect(daysAgainstGainFigure.caption(record([short, long], { said }))).toContain(said);
});

test("the unhealed are upright open ticks and said to be unhealed; groups differ by shape", () => {
  const scene = daysAgainstGainFigure.layout(record([short, long]));
  const unhealed = scene.marks.filter((mark) => mark.mark === "path" && mark.label?.includes("more than"));
  expect(unhealed).toHaveLength((short.censored ?? 0) + (long.censored ?? 0));
  const shapes = (name: string) =>
    new Set(
      scene.marks.flatMap((mark) =>
        mark.mark === "symbol" && mark.label?.startsWith(`${name}:`) && mark.label.endsWith("gained, healed") ? [mark.shape] : [],
      ),
    );
  expect([shapes("Nail"), shapes("Frame")]).toEqual([new Set(["disc"]), new Set(["diamond"])]);
});

test("the counts of every row of the table add up", () => {
  const table = daysAgainstGainFigure.table(record([short, long, empty]));
  const at = (id: string) => table.columns.findIndex((column) => column.id === id);
  for (const row of table.rows.slice(0, 2))
    expect(["healed", "censored", "ended", "excluded"].reduce((sum, id) => sum + Number(row[at(id)]), 0)).toBe(Number(row[at("segments")]));
});
