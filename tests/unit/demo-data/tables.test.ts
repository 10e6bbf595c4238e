import { expect, test } from "vitest";
import { dayOf, groupedBy, jsonOf, rowsOf } from "./read";

const segments = rowsOf("tables/segments.csv");
const nameOf = (row: Readonly<Record<string, string>>) => [row.local_id, row.bone, row.side, row.surgery_day].join();
const bySegment = new Map(segments.map((row) => [nameOf(row), row]));
const visits = groupedBy(rowsOf("tables/visits.csv"), nameOf);

test("one file a table, of the same persons and segments as the one-sheet file", () => {
  expect(segments.map(nameOf)).toEqual(rowsOf("seven-years.csv").map(nameOf));
  expect(rowsOf("tables/persons.csv")).toHaveLength(260);
  expect([...visits.keys()].filter((name) => !bySegment.has(name))).toEqual([]);
  expect(rowsOf("tables/events.csv").filter((row) => !bySegment.has(nameOf(row)))).toEqual([]);
});

test("no segment is visited twice on one day, nor after it was last seen", () => {
  for (const [name, own] of visits) {
    expect(new Set(own.map((row) => row.visit_day)).size).toBe(own.length);
    const last = bySegment.get(name)?.last_follow_up_day ?? "";
    expect(own.filter((row) => dayOf(row.visit_day ?? "") > dayOf(last))).toEqual([]);
  }
});

test("the first visit with three cortices bridged is the day of consolidation, and unhealed bones never have three", () => {
  for (const [name, own] of visits) {
    const bridged = own.filter((row) => Number(row.cortices) >= 3).map((row) => row.visit_day ?? "");
    expect(bridged.sort()[0] ?? "").toBe(bySegment.get(name)?.consolidation_day ?? "");
  }
});

test("length at the visits rises to the gain", () => {
  const reached = [...visits].filter(
    ([name]) => Number(bySegment.get(name)?.gain_mm) >= 10 && bySegment.get(name)?.distraction_end_day !== "",
  );
  expect(reached.length).toBeGreaterThan(400);
  for (const [name, own] of reached) {
    const lengths = own.filter((row) => row.distracted_mm !== "").map((row) => Number(row.distracted_mm));
    expect(Math.max(...lengths)).toBeLessThanOrEqual(Number(bySegment.get(name)?.gain_mm) + 1);
  }
});

test("every score is on the unit's own list and inside its range", () => {
  const { scores } = jsonOf("settings.json") as { scores: { code: string; range: [number, number] }[] };
  const ranges = new Map(scores.map(({ code, range }) => [code, range]));
  const rows = rowsOf("tables/scores.csv");
  expect(rows.length).toBeGreaterThan(800);
  for (const row of rows) {
    const [low, high] = ranges.get(row.score_code ?? "") ?? [Number.NaN, Number.NaN];
    expect(Number(row.score_value)).toBeGreaterThanOrEqual(low);
    expect(Number(row.score_value)).toBeLessThanOrEqual(high);
  }
});
