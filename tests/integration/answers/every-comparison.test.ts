import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { ask, cohortFlow, compare, type Difference, type MeasureGroup, measureList } from "@/lib/answers";
import { emptyMapping } from "@/lib/intake";
import { defaultSettings } from "@/lib/registry";
import { demoRegistry, stripped } from "../demo-registry";

const sexes = { field: "sex", values: ["female", "male"], where: {} } as const;
const cohorts = {
  cohorts: [
    { name: "women", where: { sex: ["female"] } },
    { name: "men", where: { sex: ["male"] } },
  ],
} as const;

type Means = readonly { readonly mean?: { readonly estimate: number | null } }[];

/** A difference of means is first less second of the means that stand beside it, unless patients in both lead. */
function expectDifferenceOf(means: Means, { kind, what, method, estimate }: Difference): void {
  if (kind !== "difference" || !what.startsWith("mean ") || !method.startsWith("difference of means with CR2")) return;
  const [a, b] = means.map((group) => group.mean?.estimate ?? Number.NaN);
  expect(estimate).toBeCloseTo((a ?? Number.NaN) - (b ?? Number.NaN), 9);
}

const ofScores = (id: string) => id.startsWith("score-");

describe("every measure of the list can be compared", () => {
  let registry: Awaited<ReturnType<typeof demoRegistry>>;
  beforeAll(async () => {
    registry = await demoRegistry();
  });
  afterAll(() => registry[Symbol.asyncDispose]());

  test.each(
    measureList()
      .map(({ id }) => id)
      .filter((id) => !ofScores(id)),
  )("%s", async (measure) => {
    const answer = await compare(registry, { measure, between: sexes });
    expect(answer.groups.map(({ label }) => label)).toEqual(["female", "male"]);
    expect(answer.sides.every(({ segments }) => segments > 0)).toBe(true);
    for (const difference of answer.differences) expectDifferenceOf(answer.groups as Means, difference);
    // two values of a field and two cohorts of the same segments are the same two sides
    const again = await compare(registry, { measure, between: cohorts });
    const unnamed = (all: readonly Difference[]) => all.map(({ a: _a, b: _b, ...difference }) => difference);
    expect(unnamed(again.differences)).toEqual(unnamed(answer.differences));
    expect(again.balance).toEqual(answer.balance);
  });
});

describe("scores are compared one by one", () => {
  const function_ = { code: "demo-function", range: [0, 100], direction: "higher", minimalDifference: 8 } as const;
  const difficulty = { code: "demo-difficulty-of-day", range: [0, 40], direction: "lower", minimalDifference: 4 } as const;
  const at = "2025-04-02T08:00:00Z";

  /** The invented unit with the scores of these codes. */
  async function withScores(...codes: readonly (typeof function_ | typeof difficulty)[]) {
    const registry = await demoRegistry();
    await registry.saveSettings({ ...defaultSettings, scores: codes.map((code) => ({ ...code, range: [...code.range] })) }, { at });
    const rows = await stripped("demo-data/tables/scores.csv", emptyMapping, { scores: codes.map(({ code }) => code) });
    await registry.commit(rows, { at });
    return registry;
  }

  test.each(["score-change", "score-responders"])("%s of a named score is the difference of what each side answers", async (measure) => {
    await using registry = await withScores(function_, difficulty);
    for (const { code } of [function_, difficulty]) {
      const answer = await compare(registry, { measure: `${measure}.${code}`, between: sexes });
      const [a, b] = await Promise.all(answer.sides.map(({ where }) => ask(registry, { measure, where, score: code })));
      const groups = [a, b].map((one) => one?.groups[0] as MeasureGroup);
      expect(groups.every(({ n = 0 }) => n > 20)).toBe(true);
      expect(answer.groups.map(({ mean, share }: Partial<MeasureGroup>) => ({ mean, share }))).toEqual(
        groups.map(({ mean, share }) => ({ mean, share })),
      );
      const of = ({ mean, share }: MeasureGroup) => mean?.estimate ?? share?.estimate ?? Number.NaN;
      expect(answer.differences[0]?.estimate).toBeCloseTo(of(groups[0] as MeasureGroup) - of(groups[1] as MeasureGroup), 9);
    }
  });

  test("the only score held needs no name; of several one must be named, and of none nothing is compared", async () => {
    await using several = await withScores(function_, difficulty);
    await expect(compare(several, { measure: "score-change", between: sexes })).rejects.toThrow(
      "compare requires one score, as score-change.CODE: demo-difficulty-of-day, demo-function are held",
    );
    await expect(compare(several, { measure: "score-change.other", between: sexes })).rejects.toThrow(
      "measure requires a score of the unit's list (demo-function, demo-difficulty-of-day), received another",
    );
    await using one = await withScores(function_);
    expect((await compare(one, { measure: "score-change", between: sexes })).measure).toBe("score-change.demo-function");
    await using none = await demoRegistry();
    await expect(compare(none, { measure: "score-change", between: sexes })).rejects.toThrow("none is held");
  });

  test("the flow of a cohort ends with the persons that some score was measured of", async () => {
    await using registry = await withScores(function_, difficulty);
    const { lines } = await cohortFlow(registry, { measure: "score-change", where: {} });
    const { groups } = await ask(registry, { measure: "score-change", score: function_.code });
    expect(lines.at(-1)?.patients).toBeGreaterThanOrEqual((groups[0] as MeasureGroup).n ?? 0);
    expect(lines.at(-1)?.patients).toBeGreaterThan(100);
  });
});
