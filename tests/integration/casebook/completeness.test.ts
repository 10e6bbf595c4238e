import { expect, test } from "vitest";
import { completeness } from "@/lib/answers";
import { at, freshWithLists } from "../registry/folder";
import { aPerson, aSegment, aVisit, personKey, row, rowsOf } from "../registry/rows";

// Two invented persons: the first, operated on in audit years 2020 and 2021, has motion and a score before the first operation only.
const later = { bone: "tibia", surgeryDay: 1500, surgeryYear: 2021 } as const;
const rows = rowsOf({
  person: [aPerson(1, { permittedUse: "audit-only" }), aPerson(2)],
  bodyMeasure: [row("bodyMeasure", { person: personKey(1), bodyDay: 990, statureMm: 1600 })],
  segment: [
    aSegment(1, { auditYear: 2020, axisDeviationBeforeMm: 0, eventsLookedFor: "fully", gainMm: 50 }),
    aSegment(1, { ...later, auditYear: 2021 }),
    // no audit year: the calendar year stands for it
    aSegment(2, { surgeryYear: 2021, eventsLookedFor: "serious-only" }),
  ],
  visit: [
    aVisit(1, 990, { kneeFlexionDeg: 140 }),
    aVisit(1, 1100, { kneeExtensionDeg: 0, cortices: 3 }),
    aVisit(1, 1499, { ...later, ankleDorsiflexionDeg: 10 }),
  ],
  score: [row("score", { person: personKey(1), scoreCode: "a-score", scoreDay: 1200, scoreValue: 50 })],
});

test("segments that have each item, of all of their audit year, the latest first", async () => {
  const registry = await freshWithLists();
  await registry.commit(rows, { at });
  const answer = await completeness(registry);
  expect(answer.years).toEqual([2021, 2020]);
  expect(answer.segments).toEqual([2, 1]);
  const recorded = Object.fromEntries(answer.items.map((item) => [item.id, item.recorded]));
  expect(recorded).toMatchObject({
    "kneeFlexionDeg-before": [0, 1],
    // taken after surgery only
    "kneeExtensionDeg-before": [0, 0],
    "ankleDorsiflexionDeg-before": [1, 0],
    // nothing off the axis is recorded too
    axisDeviationBeforeMm: [0, 1],
    // before the later operation, not before the first
    "score-before": [1, 0],
    "stature-before": [1, 1],
    permittedUse: [1, 1],
    "events-looked-for": [0, 1],
    film: [0, 1],
    gainMm: [0, 1],
  });
  for (const item of answer.items) for (const [i, n] of item.recorded.entries()) expect(n).toBeLessThanOrEqual(answer.segments[i] ?? 0);
  expect((await completeness(registry, { where: { bone: ["tibia"] } })).segments).toEqual([1]);
  expect((await completeness(registry, { asOf: 1 })).years).toEqual([]);
});
