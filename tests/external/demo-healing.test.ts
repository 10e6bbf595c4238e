import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type HealingGroup, healing } from "@/lib/answers";
import { demoRegistry } from "../integration/demo-registry";
import { storedAnswers } from "./r-scripts";

/** The same groups worked out by R from the sheet itself: clubSandwich for means, survival for the curve (demo-healing.R). */
const theirs = storedAnswers("demo-healing").answers as Readonly<Record<string, Theirs>>;
type Limits = { readonly [part in "estimate" | "se" | "df" | "lower" | "upper"]: number | null };
type Theirs = Pick<HealingGroup, "patients" | "segments" | "healed" | "censored" | "ended" | "excluded" | "quartiles"> & {
  readonly mean: Limits;
  readonly patientMean: Limits;
  readonly ratioOfSums: Limits;
  readonly median: number | null;
};

/** Agreement to nine digits of the value. */
function close(ours: number | null, r: number | null, what: string): void {
  if (r === null) expect(ours, what).toBeNull();
  else expect(Math.abs((ours ?? Number.NaN) - r), what).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(r)));
}

let registry: Awaited<ReturnType<typeof demoRegistry>>;
beforeAll(async () => {
  registry = await demoRegistry();
});
afterAll(() => registry[Symbol.asyncDispose]());

describe.each(Object.entries(theirs))("surgery to consolidation, %s", (id, r) => {
  let ours: HealingGroup;
  beforeAll(async () => {
    const [field, ...code] = id.split("-");
    const where = id === "all" ? {} : { [field as string]: [code.join("-")] };
    const answer = await healing(registry, { measure: "surgery-to-consolidation", where });
    ours = answer.groups[0] as HealingGroup;
  });

  test("counts and reasons", () => {
    const { patients, segments, healed, censored, ended, excluded } = r;
    expect(ours).toMatchObject({ patients, segments, healed, censored, ended, excluded });
    const sum = Object.values(ours.excluded).reduce((a, b) => a + b, 0);
    expect((ours.healed ?? 0) + (ours.censored ?? 0) + (ours.ended ?? 0) + sum).toBe(ours.segments);
  });

  test.each(["mean", "patientMean", "ratioOfSums"] as const)("%s", (name) => {
    for (const part of ["estimate", "se", "df", "lower", "upper"] as const) close(ours[name][part], r[name][part], part);
  });

  test("median and quartiles", () => {
    close(ours.median.estimate, r.median, "median");
    close(ours.quartiles.lower, r.quartiles.lower, "lower quartile");
    close(ours.quartiles.upper, r.quartiles.upper, "upper quartile");
  });
});
