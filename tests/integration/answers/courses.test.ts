import { expect, test } from "vitest";
import { distractionCourses } from "@/lib/answers";
import { emptyRegistry } from "../demo-registry";
import { aFemur, aPerson, person, row, rowsOf } from "./made";

/** A visit of a femur, on a day of the person's line. */
function aVisit(number: number, visitDay: number, distractedMm: number, distractedBy: "film" | "dial" = "film") {
  return row("visit", { person: person(number), bone: "femur", side: "left", surgeryDay: 0, visitDay, distractedMm, distractedBy });
}

test("a course is its film visits from the start of distraction to its end; the lag is against the rate up to the plan", async () => {
  await using registry = await emptyRegistry();
  const numbers = [1, 2, 3, 4, 5, 6];
  const segment = numbers.map((number) =>
    aFemur(number, {
      distractionStartDay: 7,
      distractionEndDay: 40,
      prescribedRateMmPerDay: 1,
      plannedGainMm: 20,
      gainMm: 20,
      daysPaused: number === 1 ? 3 : 0,
    }),
  );
  // on day 14 of distraction 14 mm are prescribed; on day 28 no more than the 20 mm planned
  const visit = numbers.flatMap((number) => [
    aVisit(number, 21, 14 - number),
    aVisit(number, 35, 20),
    aVisit(number, 38, 99, "dial"),
    aVisit(number, 60, 30),
  ]);
  await registry.commit(rowsOf({ person: numbers.map((number) => aPerson(number)), segment, visit }), { at: "2021-01-01T00:00:00Z" });
  const [all] = (await distractionCourses(registry, {})).groups;
  expect(all).toMatchObject({ segments: 6, n: 6, excluded: {}, paused: { any: 1, recorded: 6 }, reversed: { any: 0, recorded: 0 } });
  expect(all?.courses[0]?.visits).toEqual([
    { day: 14, distractedMm: 13 },
    { day: 28, distractedMm: 20 },
  ]);
  // 1 to 6 mm behind: median 3.5, quartiles of type 7 at 2.25 and 4.75
  expect(all?.lags).toEqual([
    { day: 14, median: -3.5, lower: -4.75, upper: -2.25, n: 6 },
    { day: 28, median: 0, lower: 0, upper: 0, n: 6 },
  ]);
});
