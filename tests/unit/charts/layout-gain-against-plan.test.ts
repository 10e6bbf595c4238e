import { expect, test } from "vitest";
import { type GainPlanGroup, type GainPlanMark, type GainPlanRecord, gainAgainstPlanFigure } from "@/lib/charts";
import { allText, figureCases, inventedSource, labelsIn } from "./figure-cases";
import { invented } from "./invented";

/** Invented gains about round plans; a tenth stopped early. */
function marks(n: number, seed = 4): GainPlanMark[] {
  const next = invented(seed);
  const plans = [30, 40, 50, 50, 50, 60, 65, 80];
  return Array.from({ length: n }, (_, index) => {
    const plannedMm = plans[Math.floor(next() * plans.length)] ?? 50;
    const kind = next();
    const miss = kind < 0.1 ? -8 - next() * 25 : kind > 0.95 ? 6 + next() * 4 : (next() + next() - 1.1) * 7;
    const reason = kind < 0.04 ? "pain" : kind < 0.07 ? "poor-regenerate" : null;
    return {
      segment: index + 1,
      plannedMm,
      gainMm: Math.max(0, Math.round(plannedMm + miss)),
      outcome: kind < 0.1 ? "stopped-early" : kind > 0.95 ? "overshot" : "reached",
      reason,
    };
  });
}

function group(label: string, all: readonly GainPlanMark[], more: Partial<GainPlanGroup> = {}): GainPlanGroup {
  const x = all.filter(({ plannedMm, gainMm }) => Math.abs(gainMm - plannedMm) <= 5).length;
  const patients = Math.ceil(all.length / 1.6);
  return {
    label,
    segments: all.length + 3,
    patients: patients + 2,
    n: all.length,
    excluded: { "no-target": 2, "no-gain": 1 },
    error: { estimate: -2.31, lower: -3.42, upper: -1.2, n: all.length, patients },
    within: { x, n: all.length, patients, estimate: all.length === 0 ? null : x / all.length, lower: 0.7, upper: 0.84 },
    marks: all,
    ...more,
  };
}

const none = { estimate: null, lower: null, upper: null, n: 0, patients: 0 };
const empty = group("Humerus", [], { error: none, within: { x: 0, ...none } });
const record = (groups: readonly GainPlanGroup[], more: Partial<GainPlanRecord> = {}): GainPlanRecord => ({
  ...inventedSource,
  definition: { title: "Gain less plan", sentence: "gain on film at the end of distraction against the plan at the start" },
  by: groups.length > 1 ? ["bone"] : [],
  tolerance: { within: "mm", limit: 5 },
  groups,
  ...more,
});

const records: Readonly<Record<string, GainPlanRecord>> = {
  "one-group": record([group("All segments", marks(140))]),
  "three-groups-one-empty": record([group("Femur", marks(180, 8)), group("Tibia", marks(120, 9)), empty]),
  "twelve-segments-percent": record([group("All segments", marks(12))], { tolerance: { within: "percent", limit: 10 } }),
  "one-patient": record([
    group("All segments", [{ segment: 1, plannedMm: 50, gainMm: 50, outcome: "reached" }], {
      error: { estimate: 0, lower: null, upper: null, n: 1, patients: 1 },
      within: { x: 1, n: 1, patients: 1, estimate: 1, lower: null, upper: null },
    }),
  ]),
  nothing: record([]),
};

figureCases(gainAgainstPlanFigure, records, { unpictured: { "5 000 segments": record([group("All segments", marks(5000))]) } });

test.each([12, 480, 5000])("each of %i segments is a mark that says gain and plan", (n) => {
  const all = marks(n);
  const said = labelsIn(gainAgainstPlanFigure.layout(record([group("All", all)]))).filter((label) => label.includes("planned, "));
  expect(said.map((label) => label.split(" planned")[0]).sort()).toEqual(
    all.map(({ gainMm, plannedMm }) => `${gainMm} mm gained of ${plannedMm} mm`).sort(),
  );
});

test("early stops are triangles, over the rest, and listed with their reasons", () => {
  const all: GainPlanMark[] = [
    { segment: 1, plannedMm: 50, gainMm: 30, outcome: "stopped-early", reason: "poor-regenerate" },
    { segment: 2, plannedMm: 50, gainMm: 32, outcome: "stopped-early", reason: "pain" },
    { segment: 3, plannedMm: 60, gainMm: 41, outcome: "stopped-early", reason: "pain" },
    { segment: 4, plannedMm: 50, gainMm: 50, outcome: "reached" },
    { segment: 5, plannedMm: 50, gainMm: 30, outcome: "stopped-early" },
  ];
  const scene = gainAgainstPlanFigure.layout(record([group("All", all)]));
  const list = "4 stopped early: 2 pain, 1 poor regenerate and 1 no reason recorded";
  expect(allText(scene)).toContain(list);
  expect(gainAgainstPlanFigure.caption(record([group("All", all)]))).toContain(list);
  const segments = scene.marks.flatMap((mark) => (mark.mark === "symbol" && mark.label ? [mark.shape] : []));
  expect(segments).toEqual(["disc", "triangle", "triangle", "triangle", "triangle"]);
});

test("what was gained as planned lies on the slanted line, and the field is square", () => {
  const scene = gainAgainstPlanFigure.layout(records["one-patient"] as GainPlanRecord);
  const line = scene.marks.find((mark) => mark.mark === "path" && mark.ink === "ink" && mark.d.includes("L"));
  const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = line?.mark === "path" ? [...line.d.matchAll(/-?[\d.]+/g)].map(Number) : [];
  const disc = scene.marks.find((mark) => mark.mark === "symbol" && mark.label?.includes("planned"));
  if (disc?.mark !== "symbol") throw new RangeError("no disc");
  expect((disc.y - y1) / (y2 - y1)).toBeCloseTo((disc.x - x1) / (x2 - x1), 6);
  expect(Math.abs(x2 - x1) / Math.abs(y2 - y1)).toBeCloseTo(1, 1);
});

test("marks of one plan are moved along the line: each keeps its error", () => {
  const all = Array.from({ length: 6 }, (_, index): GainPlanMark => ({ segment: index, plannedMm: 50, gainMm: 47, outcome: "reached" }));
  const scene = gainAgainstPlanFigure.layout(record([group("All", all)]));
  const line = scene.marks.find((mark) => mark.mark === "path" && mark.ink === "ink" && mark.d.includes("L"));
  const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = line?.mark === "path" ? [...line.d.matchAll(/-?[\d.]+/g)].map(Number) : [];
  const below = scene.marks.flatMap((mark) =>
    mark.mark === "symbol" && mark.label?.includes("planned") ? [mark.y - (y1 + ((mark.x - x1) / (x2 - x1)) * (y2 - y1))] : [],
  );
  expect(new Set(below.map((px) => px.toFixed(6))).size).toBe(1);
  expect(new Set(scene.marks.flatMap((mark) => (mark.mark === "symbol" && mark.label?.includes("planned") ? [mark.x] : []))).size).toBe(6);
});
