import { describe, expect, test } from "vitest";
import { compare, type HealingAnswer, healing, healingCurve, result } from "@/lib/answers";
import { tellAgain, tellHealingCurve } from "@/lib/reports";
import { emptyRegistry } from "../demo-registry";
import { aFemur, aPerson, rowsOf } from "./made";

/**
 * Sixty femora whose plan was changed where they weren't healed by day 100, and never else: those with a change took longer by that alone.
 * Every bone heals on a day of its own, 60 to 178, after 40 days of distraction.
 */
async function plans() {
  const registry = await emptyRegistry();
  const segment = Array.from({ length: 60 }, (_, i) => {
    const consolidationDay = 60 + 2 * i;
    return aFemur(i + 1, {
      gainMm: 40 + (i % 5),
      distractionEndDay: 47,
      consolidationDay,
      lastFilmDay: consolidationDay,
      plannedGainMm: 50,
      // changed on alternate bones of those that were still unhealed on day 100
      planChangeReason: consolidationDay > 100 && i % 2 === 0 ? "stiffness" : "goal-reached-early",
    });
  });
  await registry.commit(rowsOf({ person: segment.map((_, i) => aPerson(i + 1)), segment }), { at: "2021-01-01T00:00:00Z" });
  return registry;
}

const between = { field: "planChangeReason", values: ["stiffness", "goal-reached-early"], where: {} } as const;

describe("a landmark day", () => {
  test("leaves out who healed before it, counts days from it, and says so", async () => {
    await using registry = await plans();
    const answer = await healing(registry, { measure: "surgery-to-consolidation", landmark: 100 });
    const [group] = answer.groups;
    // 60, 62 … 100 healed by day 100
    expect(group).toMatchObject({ segments: 60, healed: 39, excluded: { "not-at-landmark": 21 } });
    expect(Math.min(...(group?.marks ?? []).map(({ days }) => days))).toBe(2);
    expect(answer.definition.sentence).toContain("day 100 after surgery, over bones by then lengthened, unhealed and still followed");
  });

  test("takes the early healers' advantage away: of one course, no difference is left", async () => {
    await using registry = await plans();
    const measure = "surgery-to-consolidation";
    const from = await compare(registry, { measure, between });
    const at = await compare(registry, { measure, between, landmark: 100 });
    const ratio = ({ differences }: typeof at) => differences.find(({ what }) => what === "days at equal gain");
    expect(ratio(from)?.lower).toBeGreaterThan(1);
    expect(ratio(at)?.lower).toBeLessThan(1);
    expect(ratio(at)?.upper).toBeGreaterThan(1);
    expect(from.notes.map(({ code }) => code)).toContain("split-known-later");
    expect(at.notes.map(({ code }) => code)).not.toContain("split-known-later");
    expect(at.groups.map(({ segments }) => segments)).toEqual(from.groups.map(({ segments }) => segments));
  });

  test("lets what is known by then be adjusted for, and what is known later still not", async () => {
    await using registry = await plans();
    const asked = { measure: "surgery-to-consolidation", between: { ...between, field: "planChangeReason" as const }, landmark: 100 };
    const gain = await compare(registry, { ...asked, adjust: ["daysPaused"] });
    expect(gain.notes.map(({ code }) => code)).not.toContain("known-later");
    const last = await compare(registry, { ...asked, adjust: ["gainFinalMm"] });
    expect(last.notes.map(({ code }) => code)).toContain("known-later");
    const derived = await compare(registry, { ...asked, adjust: ["time-to-consolidation"] });
    expect(derived.notes.map(({ code }) => code)).toContain("known-later");
  });

  test("the gain is in the model already, so that nothing is adjusted for it again", async () => {
    await using registry = await plans();
    const { differences, notes } = await compare(registry, { measure: "maturation", between, adjust: ["gainMm"] });
    expect(notes.map(({ code }) => code)).toContain("in-model");
    expect(differences.filter(({ adjustedFor }) => adjustedFor.length > 0)).toEqual([]);
  });

  test("what the end of distraction tells is known to a clock that starts there, and to none that starts at surgery", async () => {
    await using registry = await plans();
    const codes = async (measure: string) => (await compare(registry, { measure, between })).notes.map(({ code }) => code);
    expect(await codes("maturation")).not.toContain("split-known-later");
    expect(await codes("surgery-to-consolidation")).toContain("split-known-later");
  });

  test("a bone still being lengthened, ended or past its last film is not at the landmark", async () => {
    await using registry = await emptyRegistry();
    const held = [
      { distractionEndDay: 110, consolidationDay: 200 },
      { distractionEndDay: 50, lastFilmDay: 90, lastFollowUpDay: 95 },
      { distractionEndDay: 50, lastFilmDay: 150, endState: "amputated", implantRemovalDay: 90 },
      { distractionEndDay: 50, lastFilmDay: 150, endState: "amputated", implantRemovalDay: 140 },
      { distractionEndDay: 50, lastFilmDay: 150, lastFollowUpDay: 155 },
      { distractionEndDay: 50, rescueDay: 90, consolidationDay: 250 },
    ] as const;
    const segment = held.map((one, i) => aFemur(i + 1, { gainMm: 40, ...one }));
    await registry.commit(rowsOf({ person: segment.map((_, i) => aPerson(i + 1)), segment }), { at: "2021-01-01T00:00:00Z" });
    const counted = await healing(registry, { measure: "maturation", landmark: 100 });
    expect(counted.groups[0]).toMatchObject({ healed: 1, censored: 1, ended: 1, excluded: { "not-at-landmark": 3 } });
    const competing = await healing(registry, { measure: "maturation", landmark: 100, rescue: "competing" });
    expect(competing.groups[0]).toMatchObject({ healed: 0, censored: 1, ended: 1, excluded: { "not-at-landmark": 4 } });
  });

  test("is part of the reference, of an answer and of a place", async () => {
    await using registry = await plans();
    const first = await healing(registry, { measure: "maturation", landmark: 100 });
    const plain = await healing(registry, { measure: "maturation" });
    expect(first.stamp).not.toBe(plain.stamp);
    expect(((await result(registry, first.stamp)) as HealingAnswer).groups).toEqual(first.groups);
    const told = await tellHealingCurve(registry, { where: {}, by: [], asOf: null, rescue: "counted", landmark: 100 });
    expect(told.sentences.join(" ")).toContain("counted from day 100 after surgery");
    expect((await tellAgain(registry, told.references[0]?.stamp ?? ""))?.told.sentences).toEqual(told.sentences);
    expect((await healingCurve(registry, { landmark: 100 })).groups[0]?.n).toBe(39);
  });

  test.each([
    ["latency", 100, "a landmark requires a clock that ends at consolidation"],
    ["maturation", 0, "a landmark requires a whole number of days from 1 to 3650, received 0"],
    ["maturation", 90.5, "a landmark requires a whole number of days from 1 to 3650, received 90.5"],
  ])("%s at %d is refused", async (measure, landmark, message) => {
    await using registry = await emptyRegistry();
    await expect(healing(registry, { measure, landmark })).rejects.toThrow(message);
  });
});
