import { describe, expect, test } from "vitest";
import { ask, caseMix, compare, compareFamily, compareSeveral, compareSeveralFamily, type MeasureAnswer } from "@/lib/answers";
import { holm } from "@/lib/stats";
import { demoRegistry, emptyRegistry } from "../demo-registry";
import { aFemur, aPerson, person, row, rowsOf } from "./made";

const devices = ["magnetic-nail", "monolateral-fixator", "hexapod-circular-fixator"] as const;
const several = { field: "device", values: devices, where: {} } as const;

describe("three groups or more", () => {
  test("each is held against all the others, with one p over all when it is asked for", async () => {
    await using registry = await demoRegistry();
    const answer = await compareSeveral(registry, { measure: "gain", ...several });
    expect(answer.differences.map(({ a, b }) => [a, b])).toEqual(devices.map((device) => [device, "all others"]));
    expect([answer.p, answer.testMethod]).toEqual([null, null]);
    const rest = { device: devices.slice(1) };
    const two = await compare(registry, {
      measure: "gain",
      between: {
        cohorts: [
          { name: "a", where: { device: [devices[0]] } },
          { name: "b", where: rest },
        ],
      },
    });
    expect(answer.differences[0]?.estimate).toBeCloseTo(
      (answer.groups[0] && "mean" in answer.groups[0] ? (answer.groups[0].mean?.estimate ?? 0) : 0) - (two.groups[1]?.mean?.estimate ?? 0),
      9,
    );
    const tested = await compareSeveral(registry, { measure: "gain", ...several, test: true });
    expect(tested.testMethod).toMatch(/HTZ|Hotelling/i);
    expect(tested.p).toBeGreaterThan(0);
    expect(tested.p).toBeLessThan(1);
  });

  test("an index that is split by groups of unlike gains bears its note", async () => {
    await using registry = await demoRegistry();
    const answer = await compareSeveral(registry, { measure: "surgery-to-consolidation", ...several });
    expect(answer.notes.map(({ code }) => code)).toContain("shared-denominator");
  });

  test("several outcomes are a family: each as by itself, its p by Holm's rule", async () => {
    await using registry = await demoRegistry();
    const measures = ["gain", "gain-error", "surgery-to-consolidation"];
    const { members, tested } = await compareSeveralFamily(registry, { measures, ...several, test: true });
    const p = members.map(({ answer }) => answer.p ?? Number.NaN);
    expect(tested).toBe(3);
    expect(members.map((member) => member.holm)).toEqual(holm({ p }).adjusted);
    expect(members[1]?.answer.differences).toEqual((await compareSeveral(registry, { measure: "gain-error", ...several })).differences);
  });

  test("case mix names of each field the two groups that are least alike", async () => {
    await using registry = await demoRegistry();
    const { balance } = await compareSeveral(registry, { measure: "gain", ...several });
    const pairs = [
      [0, 1],
      [0, 2],
      [1, 2],
    ].map(([i = 0, j = 0]) => caseMix(registry, { between: { ...several, values: [devices[i] ?? null, devices[j] ?? null] } }));
    for (const [place, pair] of (await Promise.all(pairs)).entries())
      for (const { field, smd } of pair.balance) {
        const largest = balance.find((one) => one.field === field)?.smd ?? null;
        if (smd !== null && field !== "device") expect(largest, `${field} of pair ${place}`).toBeGreaterThanOrEqual(Math.abs(smd));
      }
    const ages = (await Promise.all(pairs)).flatMap((pair) => pair.balance.find(({ field }) => field === "ageAtSurgeryYears")?.smd ?? []);
    expect(balance.find(({ field }) => field === "ageAtSurgeryYears")?.smd).toBe(Math.max(...ages.map(Math.abs)));
  });

  test.each(["gain-within-10mm", "complication-events-per-segment"])("%s is compared two at a time", async (measure) => {
    await using registry = await demoRegistry();
    await expect(compareSeveral(registry, { measure, ...several })).rejects.toThrow("compare two at a time");
  });

  test("two groups are not several", async () => {
    await using registry = await demoRegistry();
    await expect(compareSeveral(registry, { measure: "gain", ...several, values: devices.slice(0, 2) })).rejects.toThrow(
      "compareSeveral requires at least three groups, received 2",
    );
  });
});

describe("counts of two groups", () => {
  const between = { field: "device", values: ["magnetic-nail", "monolateral-fixator"], where: {} } as const;

  /** Twenty nails and twenty fixators; every fixator has a pin-site infection, the first five of them an operation too. */
  async function pins() {
    const registry = await emptyRegistry();
    const numbers = Array.from({ length: 40 }, (_, i) => i + 1);
    const segment = numbers.map((i) =>
      aFemur(i, { device: i <= 20 ? "magnetic-nail" : "monolateral-fixator", eventsLookedFor: "fully", gainMm: 50, lastFollowUpDay: 400 }),
    );
    const event = (i: number, held: object) =>
      row("event", { person: person(i), bone: "femur", side: "left", surgeryDay: 0, eventNumber: 1, onsetDay: 30, ...held });
    const events = [
      ...numbers.slice(20).map((i) => event(i, { eventType: "pin-site-infection", handling: "oral-drug" })),
      ...numbers.slice(20, 25).map((i) => event(i, { eventType: "joint-contracture", handling: "operation-under-anaesthesia" })),
      ...numbers.slice(0, 3).map((i) => event(i, { eventType: "nail-bent", handling: "implant-exchanged" })),
    ];
    await registry.commit(rowsOf({ person: numbers.map((i) => aPerson(i)), segment, event: events }), { at: "2021-01-01T00:00:00Z" });
    return registry;
  }

  test("with pin sites and without them differ, in the groups and in the difference alike", async () => {
    await using registry = await pins();
    const counted = await compare(registry, { measure: "complication-segments-with-any", between });
    const left = await compare(registry, { measure: "complication-segments-with-any", between, withoutPinSites: true });
    expect(counted.differences[0]?.estimate).toBeCloseTo(3 / 20 - 1, 12);
    expect(left.differences[0]?.estimate).toBeCloseTo(3 / 20 - 5 / 20, 12);
    expect(left.groups.map((group) => ("share" in group ? group.share?.x : null))).toEqual([3, 5]);
    expect(left.stamp).not.toBe(counted.stamp);
  });

  test("of a rate of operations only operations are compared", async () => {
    await using registry = await pins();
    const answer = await compare(registry, { measure: "operations-per-segment", between });
    expect(answer.differences[0]).toMatchObject({ what: "rate ratio" });
    expect(answer.differences[0]?.estimate).toBeCloseTo(3 / 5, 12);
  });

  test("a share of all on one side has its odds ratio with a penalty beside it", async () => {
    await using registry = await pins();
    const answer = await compare(registry, { measure: "complication-segments-with-any", between });
    expect(answer.differences.map(({ what }) => what)).toEqual(["risk difference", "risk ratio", "odds ratio"]);
    expect(answer.differences[2]?.lower).toBeGreaterThan(0);
    expect(answer.differences[2]?.upper).toBeLessThan(1);
  });

  test("the heaviest classes are tested for a trend when a p is asked for, and nothing is estimated between classes", async () => {
    await using registry = await pins();
    expect((await compare(registry, { measure: "complication-worst", between })).differences).toEqual([]);
    const [trend] = (await compare(registry, { measure: "complication-worst", between, test: true })).differences;
    expect(trend).toMatchObject({ what: "trend of the heaviest class", estimate: null });
    expect(trend?.p).toBeLessThan(0.05);
  });

  test("a measure alone can leave pin sites out too", async () => {
    await using registry = await pins();
    const events = async (withoutPinSites: boolean) =>
      ((await ask(registry, { measure: "complication-events-per-segment", withoutPinSites })) as MeasureAnswer).groups[0]?.rate?.events;
    expect([await events(false), await events(true)]).toEqual([28, 8]);
    const incidence = async (withoutPinSites: boolean) =>
      ((await ask(registry, { measure: "complication-incidence", withoutPinSites })) as MeasureAnswer).groups[0]?.curve?.at(-1)?.estimate;
    expect(await incidence(false)).toBeGreaterThan((await incidence(true)) ?? 1);
  });
});

test("Holm over the family is R's rule on its p values", async () => {
  await using registry = await demoRegistry();
  const { members } = await compareFamily(registry, {
    between: { field: "bone", values: ["femur", "tibia"], where: {} },
    measures: ["gain", "gain-error", "gain-within-10mm"],
    test: true,
  });
  const p = members.map(({ lead }) => lead?.p ?? Number.NaN);
  expect(members.map((member) => member.holm)).toEqual(holm({ p }).adjusted);
});

test("bones that stand apart are in no difference, as they are in no group", async () => {
  await using registry = await emptyRegistry();
  const numbers = Array.from({ length: 12 }, (_, i) => i + 1);
  const segment = numbers.flatMap((i) => {
    const device = i <= 6 ? ("magnetic-nail" as const) : ("monolateral-fixator" as const);
    return [
      aFemur(i, { device, gainMm: 40 + i, distractionEndDay: 60 }),
      aFemur(i, { device, bone: "humerus", gainMm: 100, distractionEndDay: 60 }),
    ];
  });
  await registry.commit(rowsOf({ person: numbers.map((i) => aPerson(i)), segment }), { at: "2021-01-01T00:00:00Z" });
  const answer = await compare(registry, {
    measure: "gain",
    between: { field: "device", values: ["magnetic-nail", "monolateral-fixator"], where: {} },
  });
  expect(answer.differences[0]?.estimate).toBeCloseTo(-6, 12);
});
