import { describe, expect, test } from "vitest";
import { caseMix, compare, compareFamily } from "@/lib/answers";
import { demoRegistry } from "../demo-registry";

const between = { field: "bone", values: ["femur", "tibia"], where: {} } as const;
const measures = ["surgery-to-consolidation", "gain-error", "complication-segments-with-any"];

describe("several outcomes of the same two groups", () => {
  test("each is the comparison by itself", async () => {
    await using registry = await demoRegistry();
    const { members, tested } = await compareFamily(registry, { between, measures });
    expect(tested).toBe(0);
    for (const { measure, crude, adjusted, holm } of members) {
      const alone = await compare(registry, { measure, between });
      expect(crude.differences).toEqual(alone.differences);
      expect([adjusted, holm]).toEqual([null, null]);
      expect(crude.differences.every(({ p }) => p === null)).toBe(true);
    }
  });

  test("Holm's rule: the smallest p times their number, the next times one less, never falling", async () => {
    await using registry = await demoRegistry();
    const { members, tested } = await compareFamily(registry, { between, measures, test: true });
    const known = members
      .flatMap(({ lead, holm }) => (lead?.p == null || holm === null ? [] : [{ p: lead.p, holm }]))
      .sort((a, b) => a.p - b.p);
    expect(known).toHaveLength(tested);
    expect(tested).toBe(3);
    let least = 0;
    for (const [rank, { p, holm }] of known.entries()) {
      least = Math.max(least, Math.min(1, (tested - rank) * p));
      expect(holm).toBeCloseTo(least, 12);
    }
  });

  test("what can be adjusted is, beside what stands as it is; what can't is left crude", async () => {
    await using registry = await demoRegistry();
    const { members } = await compareFamily(registry, { between, measures, adjust: ["ageAtSurgeryYears"] });
    expect(members.map(({ adjusted }) => adjusted?.differences[0]?.adjustedFor ?? null)).toEqual([
      ["ageAtSurgeryYears"],
      null,
      ["ageAtSurgeryYears"],
    ]);
    for (const { adjusted, lead } of members) if (adjusted) expect(lead).toBe(adjusted.differences[0]);
  });

  test("an adjusted answer holds adjusted estimates alone: an index as it is would pass for one", async () => {
    await using registry = await demoRegistry();
    const { members } = await compareFamily(registry, { between, measures, adjust: ["ageAtSurgeryYears"] });
    const differences = members.flatMap(({ adjusted }) => adjusted?.differences ?? []);
    expect(differences.length).toBeGreaterThan(0);
    for (const { adjustedFor, what } of differences) expect(adjustedFor, what).toEqual(["ageAtSurgeryYears"]);
  });

  test("a covariate known only later gives no adjusted estimate, and the crude one leads", async () => {
    await using registry = await demoRegistry();
    const [member] = (await compareFamily(registry, { between, measures: ["surgery-to-consolidation"], adjust: ["gainMm"] })).members;
    expect(member?.adjusted?.notes.map(({ code }) => code)).toContain("known-later");
    expect(member?.lead).toBe(member?.crude.differences[0]);
  });

  test("none named is refused", async () => {
    await using registry = await demoRegistry();
    await expect(compareFamily(registry, { between, measures: [] })).rejects.toThrow("compareFamily requires an outcome, received none");
  });
});

test("case mix says what each group is like, in the units of its fields", async () => {
  await using registry = await demoRegistry();
  const { sides, balance } = await caseMix(registry, { between });
  expect(sides.map(({ words }) => words)).toEqual(["Femur", "Tibia"]);
  const age = balance.find(({ field }) => field === "ageAtSurgeryYears");
  expect(age?.like[0]).toMatchObject({ kind: "number", unit: "years" });
  const bone = balance.find(({ field }) => field === "bone");
  expect(bone?.like).toEqual([
    { kind: "value", value: "femur", share: 1 },
    { kind: "value", value: "tibia", share: 1 },
  ]);
});
