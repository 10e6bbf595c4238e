import { describe, expect, test } from "vitest";
import { type CourseForFigure, checkScene, drawSvg, hasCourse, layoutCourse, layoutTimeline, type TreatmentForFigure } from "@/lib/charts";

// Invented treatments: they claim nothing about anybody's outcomes.
const rescued: TreatmentForFigure = {
  title: "left femur, case 7",
  phases: [
    { phase: "latency", from: 0, to: 7, open: false },
    { phase: "distraction", from: 7, to: 62, open: false },
    { phase: "consolidation", from: 62, to: 240, open: false },
    { phase: "rescue", from: 240, to: 390, open: true },
  ],
  films: [
    { day: 30, cortices: 0 },
    { day: 90, cortices: 1 },
    { day: 240, cortices: 1 },
    { day: 390, cortices: 2 },
  ],
  moments: [
    { kind: "event", day: 40, text: "stiffness, programme changed" },
    { kind: "event", day: 41, text: "pin-site infection" },
    { kind: "planned", day: 240, text: "operation" },
    { kind: "bearing", day: 200, text: "full weight bearing" },
    { kind: "removal", day: 392, text: "frame out" },
    { kind: "seen", day: 400, text: "last seen" },
  ],
  lastDay: 400,
};
const bare: TreatmentForFigure = { title: "right tibia, case 1", phases: [], films: [], moments: [], lastDay: 0 };
const crowded: TreatmentForFigure = {
  ...rescued,
  moments: Array.from({ length: 40 }, (_, i) => ({ kind: "event" as const, day: 100 + (i % 3), text: `event ${i}` })),
  films: Array.from({ length: 60 }, (_, i) => ({ day: i * 7, cortices: Math.min(4, Math.floor(i / 12)) })),
};
const course: CourseForFigure = {
  title: "left femur, case 7",
  points: [
    { day: 15, mm: 7.5, by: "film" },
    { day: 30, mm: 21, by: "film" },
    { day: 37, mm: 30, by: "dial" },
    { day: 62, mm: 48.5, by: null },
  ],
  prescribed: [
    { day: 7, mm: 0 },
    { day: 57, mm: 50 },
  ],
  plannedMm: 50,
  gained: { day: 62, mm: 48 },
};
const labelsOf = (marks: readonly object[]) => marks.flatMap((mark) => ("label" in mark ? [mark.label] : []));

describe.each([880, 328, 240])("at %i px", (width) => {
  test.each([
    ["a rescued segment", rescued],
    ["a segment of which only the surgery is known", bare],
    ["many events and films", crowded],
  ])("the timeline of %s is a sound drawing", (_, record) => {
    const scene = layoutTimeline(record, { width });
    expect(checkScene(scene)).toEqual([]);
    expect(drawSvg(scene)).not.toMatch(/NaN|undefined|style=/);
  });

  test.each([
    ["all of it", course],
    ["one length and nothing else", { ...course, points: course.points.slice(0, 1), prescribed: null, plannedMm: null, gained: null }],
    ["a prescription that nobody measured", { ...course, points: [], gained: null }],
    ["a gain beyond the plan", { ...course, gained: { day: 90, mm: 83 } }],
  ])("the course with %s is a sound drawing", (_, record) => {
    expect(checkScene(layoutCourse(record, { width }))).toEqual([]);
  });
});

test("every stretch, moment, film and length can be reached, in words with its day", () => {
  const labels = labelsOf(layoutTimeline(rescued).marks);
  expect(labels).toHaveLength(rescued.phases.length + rescued.moments.length + rescued.films.length);
  expect(labels).toContain("day 240 to day 390: rescue, 150 days so far");
  expect(labels).toContain("day 40: stiffness, programme changed");
  expect(labels).toContain("day 90: 1 of 4 cortices bridged");
  expect(labelsOf(layoutCourse(course).marks)).toEqual([
    "planned gain 50 mm",
    "day 15: 7.5 mm on film",
    "day 30: 21.0 mm on film",
    "day 37: 30.0 mm by the dial",
    "day 62: 48.5 mm",
    "day 62: gain 48.0 mm",
  ]);
});

test("a stretch is as long as its days, and each kind is drawn apart without colour", () => {
  const { marks } = layoutTimeline(rescued, { width: 880 });
  const boxes = marks.filter((mark) => mark.mark === "band" && mark.ink === "paper").map((mark) => (mark.mark === "band" ? mark.width : 0));
  const [latency = 0, distraction = 0, consolidation = 0, rescue = 0] = boxes;
  expect(distraction / latency).toBeCloseTo(55 / 7, 6);
  expect(consolidation / distraction).toBeCloseTo(178 / 55, 6);
  expect(rescue / distraction).toBeCloseTo(150 / 55, 6);
  // the marks of each stretch stand between its paper and the next: none, one direction of hatching, a fill, two directions
  const kinds = marks.reduce<string[][]>((all, mark) => {
    if (mark.mark === "band" && mark.ink === "paper") all.push([]);
    else all.at(-1)?.push(mark.mark === "path" ? "path" : mark.mark);
    return all;
  }, []);
  expect(kinds.slice(0, 3)).toEqual([["path"], ["path", "path"], ["band", "path"]]);
  expect(kinds[3]?.slice(0, 4)).toEqual(["path", "path", "path", "path"]);
});

test("marks of one moment after another don't lie on each other", () => {
  const symbols = layoutTimeline(crowded, { width: 328 }).marks.flatMap((mark) =>
    mark.mark === "symbol" && mark.shape === "diamond" && mark.label ? [mark] : [],
  );
  for (const [i, a] of symbols.entries())
    for (const b of symbols.slice(i + 1)) expect(Math.abs(a.x - b.x) > a.size || Math.abs(a.y - b.y) > a.size).toBe(true);
});

test("a course needs a length or a prescription", () => {
  const nothing: CourseForFigure = { title: "x", points: [], prescribed: null, plannedMm: 50, gained: null };
  expect(hasCourse(nothing)).toBe(false);
  expect(() => layoutCourse(nothing)).toThrow("layoutCourse requires a length or a prescribed line, received neither");
  expect(() => layoutTimeline(bare, { width: 200 })).toThrow("layoutTimeline requires a width of at least 240 px, received 200");
});
