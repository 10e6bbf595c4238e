import { describe, expect, test } from "vitest";
import { healingCurve } from "@/lib/answers";
import { emptyRegistry } from "../demo-registry";
import { aFemur, aPerson, rowsOf } from "./made";

/**
 * Twelve patients with one femur each. Days to consolidation 100, 110 … 190 of ten; the eleventh was given up on day 105 with its last film,
 * the twelfth was not healed at its last film on day 125.
 */
function twelve() {
  const healed = Array.from({ length: 10 }, (_, i) => aFemur(i + 1, { gainMm: 40, distractionEndDay: 50, consolidationDay: 100 + 10 * i }));
  const ended = aFemur(11, { gainMm: 40, distractionEndDay: 50, lastFilmDay: 105, endState: "nonunion" });
  const censored = aFemur(12, { gainMm: 40, distractionEndDay: 50, lastFilmDay: 125, lastFollowUpDay: 130 });
  return rowsOf({ person: Array.from({ length: 12 }, (_, i) => aPerson(i + 1)), segment: [...healed, ended, censored] });
}

describe("the consolidation curve", () => {
  test("a bone that ended unhealed competes: it stays among those that never heal", async () => {
    await using registry = await emptyRegistry();
    await registry.commit(twelve(), { at: "2021-01-01T00:00:00Z" });
    const { groups, competing } = await healingCurve(registry, {});
    const [all] = groups;
    expect(competing).toBe("ended unhealed");
    expect(all).toMatchObject({ segments: 12, n: 12, healed: 10, censored: 1, ended: 1 });
    // by hand: 1/12 on day 100; free of either after day 105: 10/12 · ... each of 110 and 120 takes 1/10 and 1/9 of what is left
    const at = (day: number) => all?.curve.find((point) => point.day === day)?.estimate;
    expect(at(100)).toBeCloseTo(1 / 12, 12);
    expect(at(110)).toBeCloseTo(1 / 12 + (10 / 12) * (1 / 10), 12);
    expect(at(120)).toBeCloseTo(3 / 12, 12);
    // the censored leaves the risk set on day 125: seven at risk on day 130 hold 9/12 less the one that ended
    expect(at(130)).toBeCloseTo(3 / 12 + (8 / 12) * (1 / 7), 12);
  });

  test("without one it is Kaplan and Meier's, and nothing competes", async () => {
    await using registry = await emptyRegistry();
    await registry.commit(twelve(), { at: "2021-01-01T00:00:00Z" });
    const { groups, competing } = await healingCurve(registry, { where: { not: { endState: ["nonunion"] } } });
    expect(competing).toBeNull();
    const at = (day: number) => groups[0]?.curve.find((point) => point.day === day)?.estimate;
    expect(at(120)).toBeCloseTo(3 / 11, 12);
    expect(at(130)).toBeCloseTo(1 - (8 / 11) * (6 / 7), 12);
    expect(groups[0]?.curve.find(({ day }) => day === 125)?.censored).toBe(1);
  });

  test("what has no place on the curve is counted by its reason, and all adds up", async () => {
    await using registry = await emptyRegistry();
    const rows = twelve();
    const missing = aFemur(1, { side: "right", gainMm: 40, distractionEndDay: 50 });
    await registry.commit({ ...rows, segment: [...rows.segment, missing] }, { at: "2021-01-01T00:00:00Z" });
    const [all] = (await healingCurve(registry, {})).groups;
    expect(all?.excluded).toEqual({ "healing-date-missing": 1 });
    expect((all?.n ?? 0) + 1).toBe(all?.segments);
  });
});
