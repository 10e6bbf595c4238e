import fc, { assert, property } from "fast-check";
import { describe, expect, test } from "vitest";
import { type KaplanMeier, kaplanMeier } from "../../../lib/stats/kaplan-meier";
import { check, checksOf, numbers, toleranceOf } from "../../external/stat-checks";
import { column, expectClose, timeAnswer } from "./time-answers";

/** The curve where something happened and somebody is left, as the printed tables give it. */
function atEvents({ curve }: KaplanMeier) {
  const keep = curve.time.flatMap((_, i) => (curve.events[i] && curve.survival[i] ? [i] : []));
  const pick = (name: keyof typeof curve) => keep.map((i) => curve[name][i] as number | null);
  return {
    time: pick("time"),
    n_risk: pick("atRisk"),
    surv: pick("survival"),
    se: pick("se"),
    lower: pick("lower"),
    upper: pick("upper"),
  };
}

describe("against printed figures", () => {
  const freireich = check("km-freireich-6mp");
  test("Freireich 1963, 6-MP arm: curve, Greenwood errors, log limits", () => {
    const ours = atEvents(kaplanMeier({ times: numbers(freireich, "time"), event: numbers(freireich, "event"), limits: "log" }));
    for (const field of Object.keys(freireich.expected) as (keyof typeof ours)[]) {
      const printed = freireich.expected[field] as number[];
      expect(ours[field]).toHaveLength(printed.length);
      printed.forEach((value, i) => {
        expect(Math.abs((ours[field][i] as number) - value), `${field}[${i}]`).toBeLessThanOrEqual(toleranceOf(freireich, field));
      });
      expectClose(ours[field], freireich.computed?.[field]);
    }
  });

  const lung = check("km-lung-sex");
  test.each([
    [1, 0],
    [2, 1],
  ])("lung data, sex %i: n, events, median and limits", (sex, i) => {
    const of = numbers(lung, "sex");
    const only = (name: string) => numbers(lung, name).filter((_, row) => of[row] === sex);
    const ours = kaplanMeier({ times: only("time"), event: only("event"), limits: "log" });
    const printed = lung.expected as Record<string, number[]>;
    expect([ours.n, ours.events, ours.estimate, ours.lower, ours.upper]).toEqual(
      ["n", "events", "median", "lower", "upper"].map((field) => printed[field]?.[i]),
    );
  });

  const ovarian = check("rmst-ovarian");
  test.each([
    [1, 0],
    [2, 1],
  ])("ovarian data, group %i: mean restricted to 730 days", (group, i) => {
    const of = numbers(ovarian, "group");
    const only = (name: string) => numbers(ovarian, name).filter((_, row) => of[row] === group);
    const { n, events, restrictedMean } = kaplanMeier({ times: only("time"), event: only("event"), tau: 730 });
    const printed = ovarian.expected as Record<string, number[]>;
    expect([n, events]).toEqual([printed.n?.[i], printed.events?.[i]]);
    expect(Math.abs((restrictedMean?.estimate as number) - (printed.rmst?.[i] as number))).toBeLessThanOrEqual(0.5);
    expect(Math.abs((restrictedMean?.se as number) - (printed.se?.[i] as number))).toBeLessThanOrEqual(0.06);
    const full = ovarian.computed as Record<string, number[]>;
    expectClose(restrictedMean?.estimate, full.rmst?.[i]);
    expectClose(restrictedMean?.se, full.se?.[i]);
  });
});

describe("against R", () => {
  const loglog = check("km-freireich-6mp-loglog");
  test("Freireich: log-log and plain limits, median and its limits", () => {
    const input = { times: numbers(loglog, "time"), event: numbers(loglog, "event") };
    const [double, plain, single] = (["log-log", "plain", "log"] as const).map((limits) => kaplanMeier({ ...input, limits }));
    const theirs = loglog.expected;
    expectClose(atEvents(double as KaplanMeier).se, theirs.se_greenwood, 1e-9);
    expectClose(atEvents(double as KaplanMeier).lower, theirs.loglog_lower, 1e-9);
    expectClose(atEvents(double as KaplanMeier).upper, theirs.loglog_upper, 1e-9);
    expectClose(atEvents(plain as KaplanMeier).lower, theirs.plain_lower, 1e-9);
    expectClose(atEvents(plain as KaplanMeier).upper, theirs.plain_upper, 1e-9);
    expect([double?.estimate, double?.lower, double?.upper]).toEqual([theirs.median, theirs.median_loglog_lower, null]);
    expect(single?.lower).toBe(theirs.median_log_lower);
  });

  test.each(["log-log", "log", "plain"] as const)("kidney data, two rows a patient, %s limits", (limits) => {
    const { input, expected } = timeAnswer(`km-kidney-${limits}`);
    const ours = kaplanMeier({ times: column(input, "time"), event: column(input, "status"), patient: column(input, "id"), limits });
    compare(ours, expected);
    expect(ours.patients).toBe(38);
  });

  test("heart data, delayed entry and several rows a patient", () => {
    const { input, expected } = timeAnswer("km-heart-entry");
    const entry = column(input, "start");
    compare(kaplanMeier({ times: column(input, "stop"), event: column(input, "event"), patient: column(input, "id"), entry }), expected);
  });

  test("restricted mean by patient", () => {
    const { input, expected } = timeAnswer("rmst-kidney");
    const rows = { times: column(input, "time"), event: column(input, "status"), patient: column(input, "id") };
    const { restrictedMean } = kaplanMeier({ ...rows, tau: expected.tau as number });
    expectClose(restrictedMean?.estimate, expected.estimate);
    expectClose(restrictedMean?.se, expected.se);
    const { estimate, se, lower, upper } = restrictedMean as { estimate: number; se: number; lower: number; upper: number };
    expect(lower).toBeCloseTo(estimate - 1.959963984540054 * se, 9);
    expect(upper).toBeCloseTo(estimate + 1.959963984540054 * se, 9);
  });

  test("restricted mean with delayed entry, several rows a patient", () => {
    const { input, expected } = timeAnswer("rmst-heart-entry");
    const rows = {
      times: column(input, "stop"),
      event: column(input, "event"),
      patient: column(input, "id"),
      entry: column(input, "start"),
    };
    const { restrictedMean } = kaplanMeier({ ...rows, tau: expected.tau as number });
    expectClose(restrictedMean?.estimate, expected.estimate);
    expectClose(restrictedMean?.se, expected.se);
  });

  test.each(checksOf("edge-km").map((one) => [one.id, one] as const))("%s", (_, edge) => {
    const ours = kaplanMeier({ times: numbers(edge, "time"), event: numbers(edge, "event") });
    const at = (time: number) => ours.curve.time.indexOf(time);
    for (const [field, value] of Object.entries(edge.expected)) {
      if (field === "median") expectClose(ours.estimate, value, 1e-12);
      else if (field === "events") expect(ours.events).toBe(value);
      else if (field === "time") expect(ours.curve.time).toEqual(value);
      else if (field === "surv") expectClose(ours.curve.survival, value, 1e-12);
      else if (field.startsWith("surv_at_")) expectClose(ours.curve.survival[at(Number(field.slice(8)))], value, 1e-12);
      else expectClose(ours.curve.atRisk[at(Number(field.slice(10)))], value, 1e-12);
    }
  });

  function compare(ours: KaplanMeier, expected: ReturnType<typeof timeAnswer>["expected"]) {
    const rows = atEvents(ours);
    expectClose(rows.time, expected.time);
    expectClose(rows.n_risk, expected.atRisk);
    expectClose(rows.surv, expected.survival);
    expectClose(rows.se, expected.se, 1e-10);
    expectClose(rows.lower, expected.lower);
    expectClose(rows.upper, expected.upper);
    expectClose([ours.estimate, ours.lower, ours.upper], [expected.median, expected.medianLower, expected.medianUpper] as number[]);
  }
});

const rows = fc.array(fc.record({ time: fc.integer({ min: 1, max: 30 }), event: fc.integer({ min: 0, max: 1 }) }), {
  minLength: 3,
  maxLength: 40,
});

describe("identities", () => {
  test("one row a patient: the variance by patient is Greenwood's", () => {
    assert(
      property(rows, (data) => {
        const { curve } = kaplanMeier({ times: data.map((d) => d.time), event: data.map((d) => d.event) });
        let sum = 0;
        curve.time.forEach((_, i) => {
          const [n, d, s] = [curve.atRisk[i] as number, curve.events[i] as number, curve.survival[i] as number];
          if (s > 0) sum += d / (n * (n - d));
          if (s > 0) expect(curve.se[i]).toBeCloseTo(s * Math.sqrt(sum), 12);
          else expect(curve.se[i]).toBeNull();
        });
      }),
    );
  });

  test("nobody censored: the curve is the share beyond each time, and the median the ordinary one up to ties", () => {
    assert(
      property(fc.uniqueArray(fc.integer({ min: 1, max: 1000 }), { minLength: 3, maxLength: 40 }), (times) => {
        const ours = kaplanMeier({ times, event: times.map(() => 1) });
        ours.curve.time.forEach((time, i) => {
          expect(ours.curve.survival[i]).toBeCloseTo(times.filter((one) => one > time).length / times.length, 12);
        });
        const sorted = [...times].sort((a, b) => a - b);
        const half = sorted.length / 2;
        const middle = ((sorted[Math.ceil(half) - 1] as number) + (sorted[Math.floor(half)] as number)) / 2;
        expect(ours.estimate).toBeCloseTo(middle, 9);
      }),
    );
  });

  test("twice the same rows under the same patient: the same errors as once", () => {
    assert(
      property(rows, (data) => {
        const once = { times: data.map((d) => d.time), event: data.map((d) => d.event), patient: data.map((_, i) => i), tau: 1 };
        const twice = {
          times: [...once.times, ...once.times],
          event: [...once.event, ...once.event],
          patient: [...once.patient, ...once.patient],
        };
        const [a, b] = [kaplanMeier(once), kaplanMeier({ ...twice, tau: 1 })];
        a.curve.se.forEach((se, i) => {
          if (se === null) expect(b.curve.se[i]).toBeNull();
          else expect(b.curve.se[i]).toBeCloseTo(se, 10);
        });
        expect(b.restrictedMean?.se).toBeCloseTo(a.restrictedMean?.se as number, 10);
      }),
    );
  });
});

describe("rules", () => {
  test("flat at exactly one half to the end: the start of the stretch", () => {
    expect(kaplanMeier({ times: [1, 2, 5, 6], event: [1, 1, 0, 0] }).estimate).toBe(2);
  });
  test("quartiles follow the same rule", () => {
    expect(kaplanMeier({ times: [1, 2, 3, 4], event: [1, 1, 1, 1] }).quartiles).toEqual({ lower: 1.5, upper: 3.5 });
    expect(kaplanMeier({ times: [1, 2, 3, 4], event: [1, 0, 0, 0] }).quartiles).toEqual({ lower: 1, upper: null });
  });
  test("times within 1e-9 of each other tie, others don't", () => {
    const close = kaplanMeier({ times: [3, 3 * (1 + 5e-10), 5], event: [0, 1, 1] });
    expect(close.curve.time).toEqual([3, 5]);
    expect(close.curve.survival[0]).toBeCloseTo(2 / 3, 15);
    expect(kaplanMeier({ times: [3, 3 * (1 + 5e-9), 5], event: [0, 1, 1] }).curve.time).toHaveLength(3);
  });
  test("a row that enters at a time is not at risk then", () => {
    const { curve } = kaplanMeier({ times: [2, 4, 6], event: [1, 1, 1], entry: [0, 2, 3.9] });
    expect(curve.atRisk).toEqual([1, 2, 1]);
  });
  test("before the first event the limits are one, at zero there are none", () => {
    const { curve } = kaplanMeier({ times: [1, 2, 3], event: [0, 1, 1] });
    expect([curve.lower[0], curve.upper[0], curve.se[0]]).toEqual([1, 1, 0]);
    expect([curve.lower[2], curve.upper[2], curve.se[2]]).toEqual([null, null, null]);
  });
  test("fewer than three patients: the curve without errors, and a note", () => {
    const ours = kaplanMeier({ times: [1, 2, 3, 4], event: [1, 1, 1, 1], patient: ["a", "a", "b", "b"], tau: 3 });
    expect(ours.curve.se).toEqual([null, null, null, null]);
    expect([ours.lower, ours.upper]).toEqual([null, null]);
    expect(ours.restrictedMean).toEqual({ tau: 3, estimate: 2.25, se: null, lower: null, upper: null });
    expect(ours.notes).toContainEqual({ code: "too-few-for-interval", patients: 2, needed: 3 });
  });
  test("a mean beyond the last time is not estimable, unless the curve has come to zero", () => {
    const open = kaplanMeier({ times: [1, 2, 3], event: [1, 1, 0], tau: 4 });
    expect(open.restrictedMean).toEqual({ tau: 4, estimate: null, se: null, lower: null, upper: null });
    expect(open.notes).toContainEqual({ code: "not-estimable", because: "the restricted mean reaches beyond the last time" });
    expect(kaplanMeier({ times: [1, 2, 3], event: [1, 1, 1], tau: 4 }).restrictedMean?.estimate).toBe(2);
    expect(kaplanMeier({ times: [1, 2, 3], event: [1, 1, 0], tau: 3 }).restrictedMean?.estimate).toBeCloseTo(1 + 2 / 3 + 1 / 3, 12);
  });
  test("nothing reached is null with a note", () => {
    const ours = kaplanMeier({ times: [5, 9, 12], event: [0, 0, 0] });
    expect(ours.notes).toEqual([{ code: "not-reached", what: "The median" }]);
    expect(ours.quartiles).toEqual({ lower: null, upper: null });
  });
  test.each([1e-300, 1e15])("times of the size %d", (size) => {
    const ours = kaplanMeier({ times: [3, 3, 5, 8].map((t) => t * size), event: [1, 1, 1, 1] });
    expect((ours.estimate as number) / size).toBeCloseTo(4, 12);
    expect(ours.curve.survival).toEqual([0.5, 0.25, 0]);
  });
  test("inputs are left as they were, typed arrays are welcome", () => {
    const times = Object.freeze([8, 3, 5, 3]) as readonly number[];
    const event = Object.freeze([1, 1, 1, 1]) as readonly number[];
    const { method, ...ours } = kaplanMeier({ times: Float64Array.from(times), event: Uint8Array.from(event) });
    expect(kaplanMeier({ times, event })).toEqual({ method, ...ours });
    expect(method).toContain("Greenwood");
  });
});

describe("errors say what is required", () => {
  const good = { times: [1, 2, 3], event: [1, 0, 1] };
  test.each([
    [{ times: [], event: [] }, "kaplanMeier requires at least one row, received 0"],
    [{ ...good, event: [1, 0] }, "kaplanMeier requires event as long as times (3), received 2"],
    [{ ...good, patient: ["a"] }, "kaplanMeier requires patient as long as times (3), received 1"],
    [{ ...good, entry: [0, 0] }, "kaplanMeier requires entry as long as times (3), received 2"],
    [{ ...good, times: [1, -2, 3] }, "kaplanMeier requires times of zero or above, received -2 at 1"],
    [{ ...good, times: [1, Number.NaN, 3] }, "kaplanMeier requires finite numbers in times, received NaN at 1"],
    [{ ...good, event: [1, 0, 2] }, "kaplanMeier requires event codes from 0 to 1, received 2 at 2"],
    [{ ...good, event: [1, 0.5, 1] }, "kaplanMeier requires event codes from 0 to 1, received 0.5 at 1"],
    [{ ...good, entry: [0, 2, 0] }, "kaplanMeier requires an entry from zero to before its time (2), received 2 at 1"],
    [{ ...good, entry: [-1, 0, 0] }, "kaplanMeier requires an entry from zero to before its time (1), received -1 at 0"],
    [{ ...good, confidence: 1 }, "kaplanMeier requires a confidence between 0 and 1, received 1"],
    [{ ...good, tau: 0 }, "kaplanMeier requires tau above zero, received 0"],
    [{ ...good, limits: "logit" as "log" }, "kaplanMeier requires limits log-log, log, plain, received another"],
  ])("%j", (input, message) => {
    expect(() => kaplanMeier(input)).toThrow(message);
  });
});
