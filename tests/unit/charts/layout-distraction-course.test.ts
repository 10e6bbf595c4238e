import { expect, test } from "vitest";
import { type Course, type CourseGroup, type CourseRecord, courseFigure } from "@/lib/charts";
import { figureCases, inventedSource, labelsIn } from "./figure-cases";
import { invented } from "./invented";

function courses(n: number, { seed = 4, rates = [1] as readonly (number | null)[] } = {}): Course[] {
  const next = invented(seed);
  return Array.from({ length: n }, (_, index) => {
    const rateMmPerDay = rates[index % rates.length] ?? null;
    const plannedMm = 30 + Math.round(next() * 6) * 5;
    const own = (rateMmPerDay ?? 0.9) * (0.8 + next() * 0.25);
    const days = Math.ceil(plannedMm / own);
    const visits: { day: number; distractedMm: number }[] = [];
    for (let day = 8 + Math.round(next() * 5); day < days + 12; day += 9 + Math.round(next() * 6))
      visits.push({ day, distractedMm: Math.max(0, Math.round(Math.min(plannedMm, own * day + (next() - 0.5) * 4))) });
    return { segment: index + 1, rateMmPerDay, plannedMm, visits };
  });
}

const lag = [15, 30, 45].map((day, index) => ({ day, median: -1.5 * (index + 1), lower: -3 * (index + 1), upper: 0.4, n: 20 }));

function group(label: string, own: readonly Course[], more: Partial<CourseGroup> = {}): CourseGroup {
  const patients = Math.ceil(own.length / 1.6);
  return {
    label,
    segments: own.length + 4,
    patients: patients + 2,
    n: own.length,
    excluded: { "no-visits": 4 },
    rate: { estimate: 0.91, lower: 0.87, upper: 0.95, n: own.length, patients },
    courses: own,
    lag,
    ...more,
  };
}

const none = { estimate: null, lower: null, upper: null, n: 0, patients: 0 };
const record = (groups: readonly CourseGroup[]): CourseRecord => ({
  ...inventedSource,
  definition: { title: "Distraction rate", sentence: "length distracted on film by day from the start of distraction" },
  by: groups.length > 1 ? ["device"] : [],
  groups,
});

const records: Readonly<Record<string, CourseRecord>> = {
  "one-group": record([group("All segments", courses(30))]),
  "three-groups": record([
    group("Nail", courses(60, { rates: [1, 0.75, null] })),
    group("Frame", courses(25, { seed: 9, rates: [0.75, 1] })),
    group("Plate", [], { rate: none, lag: [] }),
  ]),
  "no-prescription": record([group("All segments", courses(12, { rates: [null] }), { lag: [] })]),
  "one-patient": record([
    group("All segments", courses(1), { rate: { estimate: 0.9, lower: null, upper: null, n: 1, patients: 1 }, lag: [] }),
  ]),
  nothing: record([]),
};

figureCases(courseFigure, records, { unpictured: { "5 000 segments": record([group("All segments", courses(5000))]) } });

test("each course is a line that says how far it came and how far from its prescription", () => {
  const behind: Course = {
    segment: 1,
    rateMmPerDay: 1,
    plannedMm: 60,
    visits: [
      { day: 20, distractedMm: 18 },
      { day: 50, distractedMm: 44 },
    ],
  };
  const stopped: Course = { segment: 2, rateMmPerDay: 1, plannedMm: 40, visits: [{ day: 52, distractedMm: 40 }] };
  const unknown: Course = { segment: 3, rateMmPerDay: null, plannedMm: 40, visits: [{ day: 30, distractedMm: 25 }] };
  const said = labelsIn(courseFigure.layout(record([group("All", [behind, stopped, unknown], { lag: [] })])));
  expect(said).toEqual([
    "44 mm by day 50, 2 visits, 6 mm behind its prescription of 1.00 mm/day",
    "40 mm by day 52, 1 visit, on its prescription of 1.00 mm/day",
    "25 mm by day 30, 1 visit, no rate recorded",
  ]);
});

test("without any prescription nothing is drawn against it", () => {
  const scene = courseFigure.layout(records["no-prescription"] as CourseRecord);
  expect(scene.marks.some((mark) => mark.mark !== "text" && "dash" in mark && mark.dash === "long")).toBe(false);
});

test.each([12, 5000])("each of %i courses can be reached", (n) => {
  expect(labelsIn(courseFigure.layout(record([group("All", courses(n), { lag: [] })])))).toHaveLength(n);
});
