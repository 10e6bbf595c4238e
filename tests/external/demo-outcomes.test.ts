import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { ask, compare, type HealingGroup, healing, healingCurve, logNormalFit, type MeasureAnswer, onStraightLines } from "@/lib/answers";
import { demoRegistry } from "../integration/demo-registry";
import { type Answer, storedAnswers } from "./r-scripts";

/** Outcomes of the demo worked out by R from the sheet itself: clubSandwich, survival and closed forms (demo-outcomes.R). */
const theirs = storedAnswers("demo-outcomes").answers;

/** Every number of R's answer is ours to nine digits of its size; words and nulls are the same. */
function alike(ours: unknown, r: Answer | undefined, at: string): void {
  if (typeof r === "number") {
    const found = typeof ours === "number" ? ours : Number.NaN;
    expect(Math.abs(found - r), `${at}: ours ${ours}, R ${r}`).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(r)));
  } else if (Array.isArray(r)) {
    expect(ours, at).toHaveLength(r.length);
    r.forEach((one: Answer, i) => void alike((ours as readonly unknown[])[i], one, `${at}[${i}]`));
  } else if (r !== null && typeof r === "object") {
    for (const [field, one] of Object.entries(r)) alike((ours as Readonly<Record<string, unknown>>)[field], one, `${at}.${field}`);
  } else expect(ours, at).toBe(r);
}

let registry: Awaited<ReturnType<typeof demoRegistry>>;
beforeAll(async () => {
  registry = await demoRegistry();
});
afterAll(() => registry[Symbol.asyncDispose]());

const clocks = Object.keys(theirs).flatMap((id) => (id.startsWith("clock/") ? [id.slice("clock/".length)] : []));

test("every clock but surgery to consolidation is worked out again", () => {
  expect(clocks).toHaveLength(11);
});

test.each(clocks)("%s: counts, reasons, means, ratio, median and quartiles", async (id) => {
  const [group] = (await healing(registry, { measure: id })).groups;
  const { median, ...ours } = group as HealingGroup;
  const r = theirs[`clock/${id}`] as Readonly<Record<string, Answer>>;
  expect(ours.excluded).toEqual(r.excluded);
  alike({ ...ours, median: median.estimate }, r, id);
});

const measured = async (measure: string) => ((await ask(registry, { measure })) as MeasureAnswer).groups[0];

test("gain less plan: bias clustered by patient", async () => {
  const group = await measured("gain-error");
  alike({ ...group?.mean, n: group?.n }, theirs["gain-error"], "gain-error");
});

test.each(["gain-within-10mm", "complication-segments-with-any"])("%s: Wilson on the effective number", async (id) => {
  alike((await measured(id))?.share, theirs[id], id);
});

test("events per 10 cm: linearised by patient on the scale of logarithms", async () => {
  alike((await measured("complication-events-per-10cm"))?.rate, theirs["complication-events-per-10cm"], "rate");
});

describe("two devices of which hardly a patient has both", () => {
  const between = { field: "device", values: ["lengthening-over-nail", "hexapod-circular-fixator"], where: {} } as const;

  test("index, days at equal gain as a ratio and on straight lines", async () => {
    const { differences } = await compare(registry, { measure: "surgery-to-consolidation", between });
    const named = (what: string) => differences.find((one) => one.what === what);
    const { patientsInBoth, ...index } = theirs["compare/index"] as Readonly<Record<string, Answer>>;
    // below five patients in both groups the difference is over all rows, clustered by patient
    expect(patientsInBoth).toBeLessThan(5);
    alike(named("mean days/cm"), index, "index");
    alike(named("days at equal gain"), theirs["compare/equal-gain"], "equal gain");
    alike(named(onStraightLines), theirs["compare/straight-lines"], "straight lines");
  });

  test("share with any event: Newcombe on the effective numbers", async () => {
    const [difference] = (await compare(registry, { measure: "complication-segments-with-any", between })).differences;
    const { patientsInBoth, ...share } = theirs["compare/share"] as Readonly<Record<string, Answer>>;
    expect(patientsInBoth).toBe(0);
    alike(difference, share, "share");
  });
});

test("events per segment at equal planned gain: the rate ratio of a Poisson model, CR2", async () => {
  const between = { field: "device", values: ["lengthening-over-nail", "hexapod-circular-fixator"], where: {} } as const;
  const answer = await compare(registry, { measure: "complication-events-per-segment", between, adjust: ["plannedGainMm"] });
  expect(answer.differences[0]).toMatchObject({ what: "rate ratio", adjustedFor: ["plannedGainMm"] });
  alike(answer.differences[0], theirs["compare/adjusted-rate"], "adjusted rate");
});

test("the consolidation curve: Kaplan–Meier with robust log-log limits by patient, cut where fewer than five are at risk", async () => {
  const [group] = (await healingCurve(registry, { where: { device: ["hexapod-circular-fixator"] } })).groups;
  const { ended, ...curve } = theirs["curve/hexapod"] as Readonly<Record<string, Answer>>;
  expect(group?.ended).toBe(ended);
  const points = group?.curve ?? [];
  const column = (pick: (point: (typeof points)[number]) => number | null) => points.map(pick);
  alike(
    {
      day: column((p) => p.day),
      atRisk: column((p) => p.atRisk),
      estimate: column((p) => p.estimate),
      lower: column((p) => p.lower),
      upper: column((p) => p.upper),
    },
    curve,
    "curve",
  );
});

test("read between films: the median and quartiles of Turnbull's curve", async () => {
  const [group] = (await healingCurve(registry, { where: { device: ["hexapod-circular-fixator"] }, films: "between" })).groups;
  const { withFilmBefore } = theirs["curve/between-films"] as { withFilmBefore: number };
  expect(withFilmBefore).toBeGreaterThan(10);
  alike(group?.betweenFilms, theirs["curve/between-films"], "between films");
});

test("two curves held against each other: the robust score by patient", async () => {
  const where = { device: ["lengthening-over-nail", "hexapod-circular-fixator"] };
  const answer = await healingCurve(registry, { where, by: ["device"], test: true });
  const { ended, p } = theirs["curve/test"] as { ended: number; p: number };
  expect(answer.groups.reduce((sum, group) => sum + group.ended, 0)).toBe(ended);
  alike(answer.test?.p, p, "p");
});

test("the log-normal model of time: its σ, and each residual beside the normal quantile in its place", async () => {
  const [group] = (await logNormalFit(registry, { measure: "surgery-to-consolidation" })).groups;
  const { scale, residual, normal } = theirs["log-normal-fit"] as { scale: number; residual: number[]; normal: number[] };
  const near = (ours: number | undefined, r: number | undefined) => expect(ours).toBeCloseTo(r ?? Number.NaN, 7);
  near(group?.scale ?? undefined, scale);
  // bones of one residual stand in one place
  const places = (group?.points ?? []).filter((point, i, all) => i === 0 || point.residual - (all[i - 1]?.residual ?? 0) > 1e-9);
  const distinct = residual
    .map((value, i) => [value, normal[i]] as const)
    .filter(([value], i) => i === 0 || value - (residual[i - 1] ?? 0) > 1e-9);
  expect(places).toHaveLength(distinct.length);
  for (const [i, [value, quantile]] of distinct.entries()) {
    near(places[i]?.residual, value);
    near(places[i]?.normal, quantile);
  }
});
