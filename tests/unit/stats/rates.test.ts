import { describe, expect, test } from "vitest";
import { eventRate, exactRateRatio, garwood, rateRatio } from "@/lib/stats";
import { check, numbers, toleranceOf } from "../../external/stat-checks";
import { answersOf, expectAsR, labelsOf, numbersOf } from "./r-answers";

describe("exact rates", () => {
  test("Garwood's limits of a count (R poisson.test)", () => {
    const found = check("poisson-exact-count");
    numbers(found, "count").forEach((events, i) => {
      const ours = garwood({ events });
      expect(ours.lower).toBeCloseTo((found.expected.lower as readonly number[])[i] as number, 8);
      expect(ours.upper).toBeCloseTo((found.expected.upper as readonly number[])[i] as number, 8);
    });
  });

  test.each([
    ["poisson-rate-per-cm", "exposure_cm", 1],
    ["poisson-rate-per-100-segments", "segments", 100],
    ["poisson-rate-zero-events", "exposure_cm", 1],
  ])("%s", (id, exposure, per) => {
    const found = check(id);
    const ours = garwood({ events: Number(found.input.events), exposure: Number(found.input[exposure]), per });
    expect(Math.abs(ours.estimate - Number(found.expected.rate))).toBeLessThanOrEqual(toleranceOf(found, "rate"));
    expect(Math.abs(ours.lower - Number(found.expected.lower))).toBeLessThanOrEqual(toleranceOf(found, "lower"));
    expect(Math.abs(ours.upper - Number(found.expected.upper))).toBeLessThanOrEqual(toleranceOf(found, "upper"));
  });

  test("the exact ratio (R poisson.test): invented counts and R's own example", () => {
    const found = check("rate-ratio-exact");
    const [events1, exposure1, events2, exposure2] = ["events1", "exposure1", "events2", "exposure2"].map((name) =>
      Number(found.input[name]),
    ) as [number, number, number, number];
    const ours = exactRateRatio({ events1, exposure1, events2, exposure2 });
    expect(ours.estimate).toBeCloseTo(Number(found.expected.rate_ratio), 8);
    expect(ours.lower).toBeCloseTo(Number(found.expected.exact_lower), 8);
    expect(ours.upper).toBeCloseTo(Number(found.expected.exact_upper), 8);
    expect(ours.p).toBeCloseTo(Number(found.expected.exact_p_two_sided), 8);
  });

  test.each(answersOf("means", "exact-ratio-"))("%s", (_, r) => {
    const input = r as unknown as { events1: number; exposure1: number; events2: number; exposure2: number };
    expectAsR(exactRateRatio(input), r, ["estimate", "lower", "upper", "p"]);
  });

  test("no event in the second group: no ratio, no upper limit; no event at all: nothing", () => {
    const second = exactRateRatio({ events1: 4, exposure1: 2, events2: 0, exposure2: 2 });
    expect(second).toMatchObject({ estimate: null, upper: null });
    expect(second.lower).toBeGreaterThan(0);
    expect(exactRateRatio({ events1: 0, exposure1: 2, events2: 0, exposure2: 2 })).toMatchObject({
      estimate: null,
      lower: null,
      upper: null,
      p: null,
    });
    expect(exactRateRatio({ events1: 2, exposure1: 1, events2: 2, exposure2: 1 }).p).toBe(1);
  });

  test("what they refuse", () => {
    expect(() => garwood({ events: 1.5 })).toThrow("garwood requires events to be a whole number of at least 0, received 1.5");
    expect(() => garwood({ events: 1, exposure: 0 })).toThrow("garwood requires exposure above zero, received 0");
    expect(() => exactRateRatio({ events1: 1, exposure1: 1, events2: -1, exposure2: 1 })).toThrow(
      "exactRateRatio requires events2 to be a whole number of at least 0, received -1",
    );
    expect(() => exactRateRatio({ events1: 1, exposure1: 0, events2: 1, exposure2: 1 })).toThrow(
      "exactRateRatio requires exposure1 above zero, received 0",
    );
  });
});

describe("rates by patient (R glm and sandwich)", () => {
  test.each(answersOf("means", "rate-epil"))("%s", (_, r) => {
    const ours = eventRate({ events: numbersOf(r, "events"), exposure: numbersOf(r, "exposure"), patient: labelsOf(r, "patient") });
    expectAsR(ours, r, ["estimate", "seLog", "df", "lower", "upper", "dispersion"]);
  });

  test.each(answersOf("means", "rate-ratio-"))("%s", (_, r) => {
    const ours = rateRatio({
      events: numbersOf(r, "values"),
      exposure: numbersOf(r, "exposure"),
      group: labelsOf(r, "group"),
      patient: labelsOf(r, "patient"),
    });
    expectAsR(ours, r, ["estimate", "seLog", "df", "lower", "upper", "statistic", "p"]);
  });

  test("per 10 is ten times per 1; splitting a patient's rows changes nothing", () => {
    const whole = eventRate({ events: [3, 0, 2], exposure: [4, 5, 6], patient: [1, 2, 3], per: 10 });
    const split = eventRate({ events: [1, 2, 0, 2], exposure: [1, 3, 5, 6], patient: [1, 1, 2, 3], per: 1 });
    expect(whole.upper as number).toBeCloseTo((split.upper as number) * 10, 10);
    expect(whole.seLog).toBeCloseTo(split.seLog as number, 12);
  });

  test("no event: the exact limit, marked plain", () => {
    const ours = eventRate({ events: [0, 0, 0], exposure: [10, 20, 30], patient: [1, 2, 3] });
    expect(ours).toMatchObject({ estimate: 0, se: null, lower: 0, dispersion: null, patientsWithEvents: 0 });
    expect(ours.upper).toBeCloseTo(garwood({ events: 0, exposure: 60 }).upper, 12);
    expect(ours.notes).toEqual([
      { code: "plain-limit", because: "no event" },
      { code: "events-in-few-patients", patients: 0 },
    ]);
  });

  test("the same rate in every patient: no spread to go by, the exact limit", () => {
    const ours = eventRate({ events: [1, 2, 1, 1, 1, 1], exposure: [10, 20, 10, 10, 10, 10], patient: [1, 2, 3, 4, 5, 6] });
    expect(ours.notes).toEqual([{ code: "plain-limit", because: "every patient has the same rate" }]);
    expect(ours.lower as number).toBeLessThan(0.1);
  });

  test("a million rows of half a million patients", () => {
    const events = Array.from({ length: 1e6 }, (_, i) => (i % 10 === 0 ? 1 : 0));
    const ours = eventRate({ events, exposure: events.map(() => 2), patient: events.map((_, i) => i >> 1), per: 10 });
    expect(ours.estimate).toBeCloseTo(0.5, 12);
    expect(ours).toMatchObject({ n: 1e6, patients: 5e5, patientsWithEvents: 1e5 });
    expect(ours.upper as number).toBeLessThan(0.505);
  });

  test("exposures far from one", () => {
    const input = { events: [3, 0, 2, 1], patient: [1, 2, 3, 4] };
    const one = eventRate({ ...input, exposure: [4, 5, 6, 3] });
    for (const size of [1e-300, 1e15]) {
      const far = eventRate({ ...input, exposure: [4, 5, 6, 3].map((value) => value * size) });
      expect((far.upper as number) * size).toBeCloseTo(one.upper as number, 10);
      expect(far.seLog).toBeCloseTo(one.seLog as number, 12);
    }
  });

  test("two patients: the rate alone; one: the same", () => {
    expect(eventRate({ events: [1, 2], exposure: [1, 1], patient: [1, 2] })).toMatchObject({ estimate: 1.5, lower: null, upper: null });
    expect(eventRate({ events: [1, 2], exposure: [1, 1], patient: [1, 1] })).toMatchObject({ estimate: 1.5, dispersion: null });
  });

  test("a group without an event has no ratio", () => {
    const ours = rateRatio({
      events: [0, 0, 0, 1, 2, 1],
      exposure: [1, 1, 1, 1, 1, 1],
      group: [1, 1, 1, 2, 2, 2],
      patient: [1, 2, 3, 4, 5, 6],
    });
    expect(ours).toMatchObject({ estimate: null, notes: [{ code: "not-estimable", because: "a group has no event" }] });
  });

  test("what they refuse", () => {
    const input = { events: [1, 2], exposure: [1, 1], patient: [1, 2] };
    expect(() => eventRate({ ...input, events: [] })).toThrow("eventRate requires at least one row, received 0");
    expect(() => eventRate({ ...input, exposure: [1] })).toThrow("eventRate requires exposure as long as events (2), received 1");
    expect(() => eventRate({ ...input, exposure: [1, 0] })).toThrow("eventRate requires exposure at 1 above zero, received 0");
    expect(() => eventRate({ ...input, events: [1, -2] })).toThrow(
      "eventRate requires events at 1 to be a whole number of at least 0, received -2",
    );
    expect(() => eventRate({ ...input, per: 0 })).toThrow("eventRate requires per above zero, received 0");
    expect(() => rateRatio({ ...input, group: [1] })).toThrow("rateRatio requires group as long as events (2), received 1");
  });
});
