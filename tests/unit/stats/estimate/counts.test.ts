import { describe, expect, test } from "vitest";
import {
  cr2Regression,
  estimate,
  exactRateRatio,
  fisherExact,
  permutationDifference,
  riskDifference,
  riskRatio,
  signFlip,
  wilson,
  wilsonClustered,
} from "@/lib/stats";
import { codes, range, scattered } from "./rows";

describe("shares", () => {
  test("of patients: Wilson with the exact beside, Fisher when asked for", () => {
    const { lead, records, test: none, notes } = estimate({ situation: "share-of-patients", x: 3, n: 20 });
    expect([lead, none, notes]).toEqual(["share", null, []]);
    expect(records.share).toEqual(wilson({ x: 3, n: 20 }));
    expect(records.exact.method).toMatch(/exact|Clopper/);
    const asked = estimate({ situation: "share-of-patients", x: 3, n: 20, against: { x: 9, n: 22 }, test: true });
    expect(asked.test).toEqual(
      fisherExact({
        table: [
          [3, 17],
          [9, 13],
        ],
      }),
    );
    expect(estimate({ situation: "share-of-patients", x: 3, n: 20, test: true }).test).toBeNull();
    expect(estimate({ situation: "share-of-patients", x: 3, n: 20, against: { x: 9, n: 22 } }).test).toBeNull();
  });

  test("of segments: Wilson on n*, the design effect said", () => {
    const event = range(30).map((i) => (i % 3 ? 0 : 1));
    const patient = range(30).map((i) => i % 18);
    const { lead, records, notes } = estimate({ situation: "share-of-segments", event, patient });
    expect([lead, records.share]).toEqual(["share", wilsonClustered({ event, patient })]);
    expect(notes).toEqual([{ code: "design-effect", deff: records.share.deff }]);
  });
  test("of segments of two patients: the values", () => {
    const { lead, notes } = estimate({ situation: "share-of-segments", event: [1, 0, 1], patient: [1, 1, 2] });
    expect([lead, codes(notes)]).toEqual(["values", ["too-few-for-interval"]]);
  });

  const event = range(40).map((i) => ((i * 7) % 5 < 2 ? 1 : 0));
  const group = range(40).map((i) => (i % 2 ? "b" : "a"));
  const patient = range(40).map((i) => (i % 2) * 100 + (i % 16));
  const rows = { group, patient, between: ["a", "b"] as const };
  test("two, not shared: Newcombe on n* and CR2 log link; patients permuted when asked for", () => {
    const answer = estimate({ situation: "two-shares", event, ...rows, seed: 1, test: true });
    expect(answer.records).toEqual({ difference: riskDifference({ event, ...rows }), ratio: riskRatio({ event, ...rows }), firth: null });
    expect(answer.test).toEqual(permutationDifference({ values: event, ...rows, seed: 1 }));
    expect([answer.lead, estimate({ situation: "two-shares", event, ...rows, seed: 1 }).test]).toEqual(["difference", null]);
  });
  test("two, shared patients: the ratio leads where there is one, signs are turned", () => {
    const shared = { group, patient: range(40).map((i) => Math.floor(i / 2)), between: ["a", "b"] as const };
    const answer = estimate({ situation: "two-shares", event, ...shared, seed: 1, test: true });
    expect(answer.test).toEqual(signFlip({ values: event, ...shared, seed: 1 }));
    expect(answer.lead).toBe("ratio");
    const none = event.map((one, i) => (group[i] === "a" ? 0 : one));
    expect(estimate({ situation: "two-shares", event: none, ...shared, seed: 1 }).lead).toBe("difference");
  });
  test("a zero cell: Firth's profile beside, marked plain when patients have several", () => {
    const none = event.map((one, i) => (group[i] === "a" ? 0 : one));
    const several = estimate({ situation: "two-shares", event: none, ...rows, seed: 1 });
    expect(several.records.firth?.coefficients[1]?.estimate as number).toBeLessThan(0);
    expect(codes(several.notes)).toEqual(expect.arrayContaining(["fallback-used", "plain-limit"]));
    const single = estimate({ situation: "two-shares", event: none, ...rows, patient: range(40), seed: 1 });
    expect(codes(single.notes)).toContain("fallback-used");
    expect(codes(single.notes)).not.toContain("plain-limit");
    // nobody at all: there is no odds ratio to profile
    expect(estimate({ situation: "two-shares", event: event.map(() => 0), ...rows, seed: 1 }).records.firth).toBeNull();
  });
  test("fewer than three patients in a group: the values, no test", () => {
    const few = { event: [1, 0, 1, 0, 1], group: [1, 1, 2, 2, 2], patient: [1, 2, 3, 4, 5], seed: 1 };
    expect(estimate({ situation: "two-shares", ...few, test: true })).toMatchObject({
      lead: "values",
      test: null,
      records: { firth: null },
    });
  });
});

describe("events per exposure", () => {
  const events = range(30).map((i) => (i * 5) % 3);
  const exposure = scattered(30, 3, 5);
  const patient = range(30).map((i) => i % 22);
  test("by patient; without an event the exact limit, marked plain", () => {
    expect(estimate({ situation: "rate", events, exposure, patient, per: 10 })).toMatchObject({ lead: "rate", notes: [] });
    const none = estimate({ situation: "rate", events: events.map(() => 0), exposure, patient, per: 10 });
    expect(codes(none.notes)).toContain("plain-limit");
    expect(none.records.rate.upper).toBeGreaterThan(0);
    const two = estimate({ situation: "rate", events: [1, 0], exposure: [2, 3], patient: [1, 2], per: 10 });
    expect([two.lead, codes(two.notes)]).toEqual(["values", ["too-few-for-interval"]]);
  });

  const group = range(30).map((i) => (i % 2 ? "b" : "a"));
  const apart = range(30).map((i) => (i % 2) * 100 + (i % 20));
  test("two rates: CR2 ratio; without events in a group the exact one", () => {
    const both = estimate({ situation: "two-rates", events, exposure, group, patient: apart, between: ["a", "b"], test: true });
    expect([both.lead, both.records.exact]).toEqual(["ratio", null]);
    expect(both.test?.p).toBe(both.records.ratio.p);
    const silent = events.map((count, i) => (group[i] === "b" ? 0 : count));
    const one = estimate({ situation: "two-rates", events: silent, exposure, group, patient: apart, between: ["a", "b"], test: true });
    const sum = (values: readonly number[], label: string) =>
      values.reduce((total, value, i) => (group[i] === label ? total + value : total), 0);
    expect(one.lead).toBe("exact");
    expect(one.records.exact).toEqual(
      exactRateRatio({ events1: sum(silent, "a"), exposure1: sum(exposure, "a"), events2: 0, exposure2: sum(exposure, "b") }),
    );
    expect(codes(one.notes)).toContain("plain-limit");
    expect(one.test?.p).toBe(one.records.exact?.p);
    expect(estimate({ situation: "two-rates", events, exposure, group, patient: apart }).test).toBeNull();
  });
  test("two rates, fewer than three patients in a group: the values", () => {
    const few = { events: [1, 0, 2, 1], exposure: [1, 1, 1, 1], group: [1, 1, 2, 2], patient: [1, 2, 3, 4] };
    expect(estimate({ situation: "two-rates", ...few, test: true })).toMatchObject({
      lead: "values",
      test: null,
      records: { exact: null },
    });
  });
});

describe("ordered classes and agreement", () => {
  const classes = [0, 2, 1, 0, 3, 1, 0, 0, 1, 2];
  const patient = ["p", "p", "q", "q", "r", "s", "t", "u", "v", "w"];
  const group = [..."aaaaabbbbb"];
  const base = { situation: "ordered-class", classes, classCount: 4, patient, group, seed: 8 } as const;
  test("the worst class of each patient, counted", () => {
    const { records, test: none, lead } = estimate(base);
    expect(records.worst).toEqual([
      { label: "a", patients: 3, counts: [0, 1, 1, 1] },
      { label: "b", patients: 5, counts: [2, 2, 1, 0] },
    ]);
    expect([lead, none]).toEqual(["worst", null]);
    const { group: _, ...together } = base;
    expect(estimate(together).records.worst).toEqual([{ label: "all", patients: 8, counts: [2, 3, 2, 1] }]);
    expect(estimate({ ...together, test: true }).test).toBeNull();
  });
  test("trend by permuting patients; not with three groups, nor with patients in both", () => {
    const direct = permutationDifference({ values: [2, 1, 3, 1, 0, 0, 1, 2], group: [0, 0, 0, 1, 1, 1, 1, 1], patient: range(8), seed: 8 });
    expect(estimate({ ...base, test: true }).test?.p).toBe(direct.p);
    const three = estimate({ ...base, group: [..."aaaabbbccc"], test: true }).test;
    expect(three?.notes).toEqual([{ code: "not-estimable", because: "more than two groups" }]);
    const both = estimate({ ...base, patient: patient.map((label, i) => (i === 9 ? "p" : label)), test: true }).test;
    expect(both?.notes).toEqual([{ code: "not-estimable", because: "patients are in both groups" }]);
  });
  test("a class outside the scheme is refused", () => {
    expect(() => estimate({ ...base, classCount: 3 })).toThrow("estimate requires classes numbered 0 to 2, received 3 at 4");
  });
  test("agreement: kappa from twenty patients on, below the cross-table", () => {
    const first = range(24).map((i) => i % 3);
    const second = range(24).map((i) => (i % 7 ? i % 3 : 0));
    const many = estimate({ situation: "agreement", first, second, classCount: 3, patient: range(24), seed: 1 });
    expect([many.lead, many.records.kappa.lower === null]).toEqual(["kappa", false]);
    const few = estimate({ situation: "agreement", first, second, classCount: 3, patient: range(24).map((i) => i % 19), seed: 1 });
    expect([few.lead, few.records.kappa.lower]).toEqual(["values", null]);
    expect(few.notes).toEqual([{ code: "too-few-for-interval", patients: 19, needed: 20 }]);
    expect(few.records.kappa.table.flat().reduce((sum, count) => sum + count, 0)).toBe(24);
  });
});

describe("adjusted shares and rates", () => {
  const n = 60;
  const values = range(n).map((i) => ((i * 11) % 7 < 3 ? 1 : 0));
  const group = range(n).map((i) => (i % 2 ? "b" : "a"));
  const age = { field: "age", values: range(n).map((i) => 8 + ((i * 5) % 17)) };
  const base = { situation: "adjusted", values, group, patient: range(n), between: ["a", "b"], covariates: [age] } as const;
  const design = range(n).map((i) => [i % 2 ? 0 : 1, age.values[i] as number]);
  const names = ["group", "age"];
  test("share: difference and ratio at equal covariates", () => {
    const { lead, records, test: asked } = estimate({ ...base, outcome: "share", test: true });
    const difference = cr2Regression({ values, patient: range(n), design, names });
    const ratio = cr2Regression({ values, patient: range(n), design, names, link: "log" });
    expect([lead, records.models]).toEqual(["difference", [difference, ratio]]);
    expect([records.difference, records.ratio]).toEqual([difference.coefficients[1], ratio.coefficients[1]]);
    expect(asked?.p).toBe(difference.coefficients[1]?.p);
    expect(estimate({ ...base, outcome: "share" }).test).toBeNull();
  });
  test("rate: ratio with the exposure as offset", () => {
    const exposure = scattered(n, 2, 5);
    const { lead, records } = estimate({ ...base, outcome: "rate", exposure });
    const direct = cr2Regression({ values, patient: range(n), design, names, link: "log", exposure });
    expect([lead, records.difference, records.ratio]).toEqual(["ratio", null, direct.coefficients[1]]);
  });
  test("a share is counted by its rarer outcome: nine such patients carry no covariate", () => {
    const rare = range(n).map((i) => (i < 9 ? 1 : 0));
    const { records, notes, lead } = estimate({ ...base, outcome: "share", values: rare });
    expect([lead, records.models]).toEqual(["values", []]);
    expect(notes).toEqual([{ code: "too-many-covariates", columns: 1, patients: 9, allowed: 0 }]);
    const common = rare.map((one) => 1 - one);
    expect(estimate({ ...base, outcome: "share", values: common }).records.models).toEqual([]);
    expect(estimate({ ...base, outcome: "rate", values: rare }).records.models).toHaveLength(1);
  });
  test("known later, and not recorded", () => {
    const late = estimate({ ...base, outcome: "share", covariates: [{ ...age, knownLater: true }] });
    expect(late.notes).toEqual([{ code: "known-later", field: "age" }]);
    const blank = estimate({
      ...base,
      outcome: "share",
      covariates: [{ ...age, values: age.values.map((one, i) => (i < 2 ? null : one)) }],
    });
    expect(blank.notes).toContainEqual({ code: "left-out", n: 2 });
    expect(blank.records.models[0]?.n).toBe(n - 2);
  });
  test("columns of unlike length are refused", () => {
    expect(() => estimate({ ...base, outcome: "share", patient: [1] })).toThrow(
      "estimate requires each column as long as values (60), received 1",
    );
    expect(() => estimate({ ...base, outcome: "share", covariates: [{ field: "age", values: [1] }] })).toThrow(
      "estimate requires age for each row (60), received 1",
    );
  });
});
