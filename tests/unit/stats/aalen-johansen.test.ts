import fc, { assert, property } from "fast-check";
import { describe, expect, test } from "vitest";
import { type AalenJohansen, aalenJohansen } from "../../../lib/stats/aalen-johansen";
import { kaplanMeier } from "../../../lib/stats/kaplan-meier";
import { check, numbers } from "../../external/stat-checks";
import { column, expectClose, timeAnswer } from "./time-answers";

/** The columns of a cause at given times. */
function at({ time, causes, free }: AalenJohansen, times: readonly number[], cause: number) {
  const steps = times.map((one) => time.findLastIndex((step) => step <= one));
  const curve = causes[cause - 1];
  const pick = (values: readonly (number | null)[] | undefined) => steps.map((step) => values?.[step]);
  return {
    incidence: pick(curve?.incidence),
    se: pick(curve?.se),
    lower: pick(curve?.lower),
    upper: pick(curve?.upper),
    free: pick(free),
  };
}

describe("against R", () => {
  test.each(["aj-melanoma", "aj-fixture-ties"])("%s: cuminc and survfit, one row a person", (id) => {
    const one = check(id);
    const ours = aalenJohansen({ times: numbers(one, "time"), event: numbers(one, "status") });
    const [times, theirs] = [one.expected.times as number[], one.expected];
    expectClose(at(ours, times, 1).incidence, theirs.cif_event1, 1e-7);
    expectClose(at(ours, times, 2).incidence, theirs.cif_event2, 1e-7);
    expectClose(at(ours, times, 1).free, theirs.event_free, 1e-7);
    expectClose(at(ours, times, 1).se, theirs.survival_se_event1, 1e-7);
    expectClose(at(ours, times, 2).se, theirs.survival_se_event2, 1e-7);
  });

  test.each([
    ["aj-bladder-gaps", "log-log"],
    ["aj-bladder-gaps-log", "log"],
  ] as const)("%s: several rows a patient", (id, limits) => {
    const { input, expected } = timeAnswer(id);
    const rows = { times: column(input, "time"), event: column(input, "status"), patient: column(input, "id") };
    const ours = aalenJohansen({ ...rows, limits });
    const times = expected.at as number[];
    const first = at(ours, times, 1);
    expectClose(first.incidence, expected.incidence1);
    expectClose(first.free, expected.free);
    expectClose(first.se, expected.se1);
    expectClose(first.lower, expected.lower1);
    expectClose(first.upper, expected.upper1);
    expectClose(at(ours, times, 2).incidence, expected.incidence2);
    expectClose(at(ours, times, 2).se, expected.se2);
    const asked = aalenJohansen({ ...rows, limits, at: 12, cause: 2 });
    expectClose(
      [asked.estimate, asked.se],
      [expected.incidence2, expected.se2].map((values) => (values as number[])[2] as number),
    );
    expect(asked.patients).toBe(new Set(rows.patient).size);
  });
});

const rows = fc.array(fc.record({ time: fc.integer({ min: 1, max: 25 }), event: fc.integer({ min: 0, max: 2 }) }), {
  minLength: 3,
  maxLength: 40,
});

describe("identities", () => {
  test("the incidences and the share without any event add up to one", () => {
    assert(
      property(rows, (data) => {
        const ours = aalenJohansen({ times: data.map((d) => d.time), event: data.map((d) => d.event), cause: 2 });
        ours.time.forEach((_, i) => {
          const sum = ours.causes.reduce((total, { incidence }) => total + (incidence[i] as number), 0);
          expect(sum + (ours.free[i] as number)).toBeCloseTo(1, 12);
        });
      }),
    );
  });

  test("nobody censored: the incidence is a plain share F, and its error √(F(1 − F)/n), to the last step", () => {
    assert(
      property(rows, (data) => {
        const ours = aalenJohansen({ times: data.map((d) => d.time), event: data.map((d) => Math.max(d.event, 1)), cause: 2 });
        const n = data.length;
        for (const { cause, incidence, se } of ours.causes) {
          ours.time.forEach((time, i) => {
            const share = data.filter((d) => d.time <= time && Math.max(d.event, 1) === cause).length / n;
            expect(incidence[i]).toBeCloseTo(share, 12);
            // squares are compared: where the error is zero, its root holds only half of the digits
            expect((se[i] as number) ** 2).toBeCloseTo((share * (1 - share)) / n, 12);
          });
        }
      }),
    );
  });

  test("one cause only: one minus Kaplan–Meier, with the same error, several rows a patient and late entry included", () => {
    assert(
      property(rows, (data) => {
        const input = {
          times: data.map((d) => d.time),
          event: data.map((d) => Math.min(d.event, 1)),
          patient: data.map((_, i) => (i < 3 ? i : i % 5)),
          entry: data.map((d, i) => (i % 3 === 0 ? d.time / 2 : 0)),
        };
        const [ours, { curve }] = [aalenJohansen(input), kaplanMeier(input)];
        curve.time.forEach((_, i) => {
          expect(ours.causes[0]?.incidence[i]).toBeCloseTo(1 - (curve.survival[i] as number), 12);
          if (curve.survival[i]) expect(ours.causes[0]?.se[i]).toBeCloseTo(curve.se[i] as number, 8);
        });
      }),
    );
  });
});

describe("patient bootstrap", () => {
  const patient = Array.from({ length: 60 }, (_, i) => i % 30);
  const times = patient.map((_, i) => 10 + ((i * 37) % 53));
  const event = patient.map((_, i) => (i * 7) % 3);
  const input = { times, event, patient, variance: "bootstrap", at: 40, seed: 11 } as const;
  test("the same seed gives the same limits, another seed others, the estimate stays", () => {
    const [a, b, c] = [11, 11, 12].map((seed) => aalenJohansen({ ...input, seed, replicates: 199 })) as [
      AalenJohansen,
      AalenJohansen,
      AalenJohansen,
    ];
    expect(b).toEqual(a);
    expect([c.lower, c.upper]).not.toEqual([a.lower, a.upper]);
    expect(c.estimate).toBe(a.estimate);
  });
  test("its error and limits come near the jackknife's", () => {
    const boot = aalenJohansen(input);
    const jack = aalenJohansen({ ...input, variance: "jackknife", limits: "plain" });
    expect(boot.estimate).toBe(jack.estimate);
    expect((boot.se as number) / (jack.se as number)).toBeGreaterThan(0.9);
    expect((boot.se as number) / (jack.se as number)).toBeLessThan(1.1);
    expect(Math.abs((boot.lower as number) - (jack.lower as number))).toBeLessThan(0.02);
    expect(Math.abs((boot.upper as number) - (jack.upper as number))).toBeLessThan(0.02);
    expect(boot.method).toContain("patient bootstrap (1999)");
  });
  test("limits are shares at every step, also where hardly anybody is left, and the error that of the resamples", () => {
    const { causes, time } = aalenJohansen({ ...input, replicates: 199 });
    for (const { lower, upper, se } of causes) {
      time.forEach((_, i) => {
        expect(lower[i]).toBeGreaterThanOrEqual(0);
        expect(upper[i]).toBeGreaterThanOrEqual(lower[i] as number);
        expect(upper[i]).toBeLessThanOrEqual(1);
        expect(Number.isFinite(se[i])).toBe(true);
      });
    }
  });
  test("below twenty patients there is no interval, and a note", () => {
    const few = aalenJohansen({ ...input, patient: patient.map((p) => p % 19) });
    expect([few.se, few.lower, few.upper]).toEqual([null, null, null]);
    expect(few.notes).toEqual([{ code: "too-few-for-interval", patients: 19, needed: 20 }]);
  });
});

describe("rules", () => {
  const input = { times: [2, 3, 5, 5, 8], event: [1, 2, 1, 0, 0] };
  test("before the first event zero, beyond the last time unknown, unless nobody is left", () => {
    expect(aalenJohansen({ ...input, at: 1 })).toMatchObject({ estimate: 0, se: 0, lower: 0, upper: 0, at: 1 });
    expect(aalenJohansen({ ...input, at: 9 })).toMatchObject({ estimate: null, se: null, lower: null, upper: null });
    expect(aalenJohansen({ times: [1, 2, 3], event: [1, 2, 1], at: 9 }).estimate).toBeCloseTo(2 / 3, 12);
  });
  test("by hand: 1/5, then 1/4 of 4/5 goes to the other cause, then a third of 3/5", () => {
    const { causes, free, at, estimate } = aalenJohansen(input);
    expectClose(causes[0]?.incidence, [0.2, 0.2, 0.4, 0.4], 1e-12);
    expectClose(causes[1]?.incidence, [0, 0.2, 0.2, 0.2], 1e-12);
    expectClose(free, [0.8, 0.6, 0.4, 0.4], 1e-12);
    expect([causes[0]?.events, at]).toEqual([[1, 0, 1, 0], 8]);
    expect(estimate).toBeCloseTo(0.4, 12);
  });
  test("a cause before its first event has the limits zero, one that took everybody none", () => {
    const { causes } = aalenJohansen({ times: [1, 2, 3], event: [0, 1, 1] });
    expect([causes[0]?.lower, causes[0]?.upper]).toEqual([
      [0, expect.any(Number), null],
      [0, expect.any(Number), null],
    ]);
  });
  test("a cause that nobody had", () => {
    expect(aalenJohansen({ ...input, cause: 3 })).toMatchObject({ estimate: 0, lower: 0, upper: 0, cause: 3 });
  });
  test("fewer than three patients: no errors", () => {
    const ours = aalenJohansen({ times: [1, 2, 3], event: [1, 2, 0], patient: ["a", "a", "b"] });
    expect(ours.causes[0]?.se).toEqual([null, null, null]);
    expect(ours.notes).toEqual([{ code: "too-few-for-interval", patients: 2, needed: 3 }]);
  });
});

describe("errors say what is required", () => {
  const good = { times: Array.from({ length: 20 }, (_, i) => i + 1), event: Array.from({ length: 20 }, (_, i) => i % 3) };
  test.each([
    [{ times: [], event: [] }, "aalenJohansen requires at least one row, received 0"],
    [{ ...good, cause: 0 }, "aalenJohansen requires cause to be a whole number of at least 1, received 0"],
    [{ ...good, event: good.event.map(() => 101) }, "aalenJohansen requires event codes from 0 to 100, received 101 at 0"],
    [{ ...good, confidence: 0 }, "aalenJohansen requires a confidence between 0 and 1, received 0"],
    [{ ...good, at: -1 }, "aalenJohansen requires at above zero, received -1"],
    [{ ...good, limits: "arcsine" as "log" }, "aalenJohansen requires limits log-log, log, plain, received another"],
    [{ ...good, variance: "bootstrap" as const }, "aalenJohansen requires a seed for the bootstrap, received none"],
    [
      { ...good, variance: "bootstrap" as const, seed: 1, replicates: 10 },
      "aalenJohansen requires replicates to be a whole number of at least 99, received 10",
    ],
  ])("%#", (input, message) => {
    expect(() => aalenJohansen(input)).toThrow(message);
  });
});
