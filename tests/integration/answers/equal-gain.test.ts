import { describe, expect, test } from "vitest";
import { compare, daysAgainstGain, healing } from "@/lib/answers";
import { emptyRegistry } from "../demo-registry";
import { aFemur, aPerson, rowsOf } from "./made";

/** Sixty days that don't depend on gain and twenty for each centimetre, with a spread of a few days: one line for everyone. */
const daysFor = (cm: number, i: number) => Math.round(60 + 20 * cm + ((i * 7) % 11) - 5);

/** Two groups on that one line, the first with short gains, the second with long ones; every third patient has both femora done. */
function trap() {
  const segments = Array.from({ length: 48 }, (_, i) => {
    const short = i < 24;
    const cm = (short ? 2 : 6) + (i % 6) * 0.4;
    const sides = i % 3 === 0 ? (["left", "right"] as const) : (["left"] as const);
    return sides.map((side) =>
      aFemur(i + 1, {
        side,
        device: short ? "magnetic-nail" : "monolateral-fixator",
        gainMm: cm * 10,
        distractionEndDay: 7 + Math.round(cm * 10),
        consolidationDay: daysFor(cm, i + (side === "left" ? 0 : 5)),
      }),
    );
  }).flat();
  return rowsOf({ person: Array.from({ length: 48 }, (_, i) => aPerson(i + 1)), segment: segments });
}

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
