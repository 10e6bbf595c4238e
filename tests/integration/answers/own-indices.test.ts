import { describe, expect, test } from "vitest";
import {
  ask,
  clocksAsOf,
  cohortFlow,
  cohortGroups,
  compare,
  daysAgainstGain,
  type HealingAnswer,
  healing,
  measureList,
  result,
} from "@/lib/answers";
import { canonicalWhere } from "@/lib/cohorts";
import { defaultSettings, type Settings } from "@/lib/registry";
import { demoRegistry, emptyRegistry } from "../demo-registry";
import { aFemur, aPerson, rowsOf } from "./made";

const at = "2025-05-01T08:00:00Z";
const index = {
  id: "own-regenerate",
  name: "Regenerate index",
  from: "distraction-end",
  to: "consolidation",
  criterion: null,
  per: "gainMm",
  rescue: "counted",
  unit: "days/cm",
} as const;
const settings = (...indices: Settings["indices"]): Settings => ({ ...defaultSettings, indices });

describe("an index of the unit's own", () => {
  test("with the parts of a built-in one answers as it, everywhere", async () => {
    await using registry = await demoRegistry();
    await registry.saveSettings(settings(index), { at });
    const [own, built] = await Promise.all(
      [index.id, "maturation"].map((measure) => healing(registry, { measure, by: ["bone"] }).then(({ groups }) => groups)),
    );
    expect(own).toEqual(built);
    const between = { field: "bone", values: ["femur", "tibia"], where: {} } as const;
    const [ours, theirs] = await Promise.all([index.id, "maturation"].map((measure) => compare(registry, { measure, between })));
    expect(ours?.differences).toEqual(theirs?.differences);
    expect([ours?.unit, ours?.definition.title]).toEqual(["days/cm", "Regenerate index"]);
    const lines = await Promise.all([index.id, "maturation"].map((measure) => daysAgainstGain(registry, { measure })));
    expect(lines[0]?.groups).toEqual(lines[1]?.groups);
    const flows = await Promise.all([index.id, "maturation"].map((measure) => cohortFlow(registry, { where: {}, measure })));
    expect(flows[0]?.lines).toEqual(flows[1]?.lines);
  });

  test("stands in the list of its own unit alone, and is asked again by its reference as it stood", async () => {
    await using registry = await demoRegistry();
    expect(measureList(await clocksAsOf(registry)).map(({ id }) => id)).not.toContain(index.id);
    await expect(ask(registry, { measure: index.id })).rejects.toThrow("an answer requires the id of a clock");
    await registry.saveSettings(settings(index), { at });
    expect(measureList(await clocksAsOf(registry)).find(({ id }) => id === index.id)).toMatchObject({
      title: "Regenerate index",
      unit: "days/cm",
    });
    const first = (await ask(registry, { measure: index.id })) as HealingAnswer;
    await registry.saveSettings(settings({ ...index, from: "surgery" }), { at });
    const later = (await ask(registry, { measure: index.id })) as HealingAnswer;
    expect(later.groups[0]?.mean.estimate).not.toBe(first.groups[0]?.mean.estimate);
    const again = (await result(registry, first.stamp)) as HealingAnswer;
    expect(again.groups).toEqual(first.groups);
  });

  test("is a condition and a split like a built-in one, in its unit's numbers", async () => {
    await using registry = await demoRegistry();
    await registry.saveSettings(settings(index), { at });
    const flow = (id: string) => cohortFlow(registry, { where: { [id]: { from: 30 } }, measure: "gain" });
    const [own, built] = await Promise.all([index.id, "maturation"].map(flow));
    const left = (answer: typeof own) => answer?.lines.map(({ kind, segments, patients }) => [kind, segments, patients]);
    expect(left(own)).toEqual(left(built));
    expect(own?.lines.at(-1)?.segments).toBeGreaterThan(0);
    const split = (id: string) => cohortGroups(registry, { where: {}, by: [`${id}:30/60`] });
    const [ours, theirs] = await Promise.all([index.id, "maturation"].map(split));
    const counts = (groups: typeof ours) => groups?.map(({ segments, patients }) => [segments, patients]);
    expect(counts(ours)).toEqual(counts(theirs));
    expect(ours?.length).toBeGreaterThan(2);
  });

  test("that isn't in the settings is recorded of nobody", async () => {
    await using registry = await demoRegistry();
    const groups = await cohortGroups(registry, { where: { "own-gone": { missing: false } }, by: [] });
    expect(groups.flatMap(({ segments }) => segments)).toEqual([0]);
    expect(canonicalWhere({ "own-b": { from: 1 }, bone: ["femur"], "own-a": { from: 2 } })).toBe(
      '{"bone":["femur"],"own-a":{"from":2},"own-b":{"from":1}}',
    );
  });

  test("with a criterion counts only bones read by it; consolidation worked out from visits is three of four", async () => {
    await using registry = await emptyRegistry();
    const criteria = ["three-of-four", "three-of-four", "four-of-four", null] as const;
    const segment = criteria.map((consolidationCriterion, i) =>
      aFemur(i + 1, { gainMm: 50, distractionEndDay: 57, consolidationDay: 150 + i, consolidationCriterion }),
    );
    await registry.commit(rowsOf({ person: segment.map((_, i) => aPerson(i + 1)), segment }), { at });
    await registry.saveSettings(settings({ ...index, criterion: "three-of-four" }), { at });
    const [group] = (await healing(registry, { measure: index.id })).groups;
    expect(group).toMatchObject({ healed: 2, excluded: { "other-criterion": 2 } });
    // (150 + 151) / 2 less 57 days, over 5 cm
    expect(group?.mean.estimate).toBeCloseTo((150.5 - 57) / 5, 12);
  });

  test("mm a day, per the plan, to full weight bearing: each part is taken as said", async () => {
    await using registry = await emptyRegistry();
    const segment = [1, 2, 3].map((i) => aFemur(i, { gainMm: 50, plannedGainMm: 40, distractionEndDay: 57, fullWeightBearingDay: 200 }));
    await registry.commit(rowsOf({ person: segment.map((_, i) => aPerson(i + 1)), segment }), { at });
    await registry.saveSettings(
      settings(
        { ...index, id: "own-pace", name: "Pace", from: "distraction-start", to: "distraction-end", unit: "mm/day" },
        {
          ...index,
          id: "own-bearing",
          name: "Bearing by plan",
          from: "distraction-start",
          to: "full-weight-bearing",
          per: "plannedGainMm",
        },
      ),
      { at },
    );
    const mean = async (measure: string) => ((await healing(registry, { measure })).groups[0]?.mean.estimate ?? Number.NaN) as number;
    expect(await mean("own-pace")).toBe(1);
    expect(await mean("own-bearing")).toBeCloseTo((193 * 10) / 40, 12);
  });
});

test.each([
  ["indices.0.id", { id: "maturation" }],
  ["indices.0.name", { name: "<b>" }],
  ["indices.0", { from: "distraction-end", to: "distraction-end" }],
  ["indices.0", { unit: "mm/day" }],
  ["indices.0", { to: "full-weight-bearing", criterion: "ct" }],
  ["indices.0.per", { per: "statureMm" }],
] as const)("settings with a wrong %s are refused by name: %j", async (name, wrong) => {
  await using registry = await emptyRegistry();
  await expect(registry.saveSettings(settings({ ...index, ...wrong } as Settings["indices"][number]), { at })).rejects.toThrow(
    `received ${name} that can't be`,
  );
});

test("two indices of one id are refused, and settings kept without indices hold none", async () => {
  await using registry = await emptyRegistry();
  await expect(registry.saveSettings(settings(index, index), { at })).rejects.toThrow("received indices that can't be: each id once");
  const { indices: _, ...without } = defaultSettings;
  await registry.saveSettings({ ...without, toleranceMm: 3 } as Settings, { at });
  expect((await registry.settings()).indices).toEqual([]);
});
