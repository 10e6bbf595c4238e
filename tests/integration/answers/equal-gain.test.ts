import { describe, expect, test } from "vitest";
import { compare, daysAgainstGain, healing, isShown, onStraightLines } from "@/lib/answers";
import { emptyRegistry } from "../demo-registry";
import { trap } from "./trap";

describe("two groups on one line, days = 60 + 20 · cm, with unlike gains", () => {
  test("the index differs by arithmetic, the days at equal gain don't, and the note says why", async () => {
    await using registry = await emptyRegistry();
    await registry.commit(trap(), { at: "2021-01-01T00:00:00Z" });
    const answer = await compare(registry, {
      measure: "surgery-to-consolidation",
      between: { field: "device", values: ["magnetic-nail", "monolateral-fixator"], where: {} },
    });
    const [equal, index] = answer.differences;
    expect(equal).toMatchObject({ kind: "ratio", what: "days at equal gain" });
    expect(equal?.lower).toBeLessThan(1.1);
    expect(equal?.upper).toBeGreaterThan(0.9);
    // by arithmetic: 60/2.0…4.0 + 20 against 60/6.0…8.0 + 20, about 20 against 9 days/cm above the slope
    expect(index?.lower).toBeGreaterThan(5);
    expect(answer.notes.map(({ code }) => code)).toContain("shared-denominator");
    // a ratio can't hold a line that doesn't pass through nothing; the lines are one, and the answer says that the two disagree
    const lines = answer.differences.find(({ what }) => what === onStraightLines);
    expect(lines && isShown(lines)).toBe(false);
    expect(answer.notes.map(({ code }) => code).includes("scales-disagree")).toBe(equal !== undefined && isShown(equal));
  });

  test("split by device, the answer bears the note and each line finds 60 and 20", async () => {
    await using registry = await emptyRegistry();
    await registry.commit(trap(), { at: "2021-01-01T00:00:00Z" });
    const split = await healing(registry, { measure: "surgery-to-consolidation", by: ["device"] });
    expect(split.notes.map(({ code }) => code)).toContain("shared-denominator");
    const lines = await daysAgainstGain(registry, { measure: "surgery-to-consolidation", by: ["device"] });
    for (const { line } of lines.groups) {
      expect(line?.fixedDays.lower).toBeLessThan(60);
      expect(line?.fixedDays.upper).toBeGreaterThan(60);
      expect(line?.daysPerCm.lower).toBeLessThan(20);
      expect(line?.daysPerCm.upper).toBeGreaterThan(20);
    }
  });

  test("of singletons the clustered and the plain interval coincide; of pairs they don't", async () => {
    await using registry = await emptyRegistry();
    await registry.commit(trap(), { at: "2021-01-01T00:00:00Z" });
    const [singles] = (await healing(registry, { measure: "surgery-to-consolidation", where: { side: ["left"] } })).groups;
    expect(singles?.mean.lower).toBeCloseTo(singles?.plain.lower ?? Number.NaN, 9);
    expect(singles?.mean.upper).toBeCloseTo(singles?.plain.upper ?? Number.NaN, 9);
    expect(singles?.mean.df).toBeCloseTo(47, 9);
    const [all] = (await healing(registry, { measure: "surgery-to-consolidation" })).groups;
    expect(Math.abs((all?.mean.lower ?? 0) - (all?.plain.lower ?? 0))).toBeGreaterThan(0.1);
  });

  test("splits looked at are counted", async () => {
    await using registry = await emptyRegistry();
    await registry.commit(trap(), { at: "2021-01-01T00:00:00Z" });
    for (const by of ["device", "side", "bone"]) await healing(registry, { measure: "maturation", by: [by] });
    const answer = await compare(registry, {
      measure: "maturation",
      between: { field: "device", values: ["magnetic-nail", "monolateral-fixator"], where: {} },
    });
    expect(answer.splitsLookedAt).toBe(3);
  });
});

test("a bone can't stand on both sides of a comparison", async () => {
  await using registry = await emptyRegistry();
  await registry.commit(trap(), { at: "2021-01-01T00:00:00Z" });
  const both = {
    cohorts: [
      { name: "femora", where: { bone: ["femur"] } },
      { name: "left", where: { side: ["left"] } },
    ],
  } as const;
  await expect(compare(registry, { measure: "gain", between: both })).rejects.toThrow(
    "compare requires groups without a segment in both, received 48 in both",
  );
});

test("a covariate known after the clock's start gets no adjusted estimate", async () => {
  await using registry = await emptyRegistry();
  await registry.commit(trap(), { at: "2021-01-01T00:00:00Z" });
  const answer = await compare(registry, {
    measure: "surgery-to-consolidation",
    between: { field: "device", values: ["magnetic-nail", "monolateral-fixator"], where: {} },
    adjust: ["gainMm"],
  });
  expect(answer.differences[0]).toMatchObject({ what: "days at equal gain", estimate: null });
  expect(answer.notes.map(({ code }) => code)).toContain("known-later");
});
