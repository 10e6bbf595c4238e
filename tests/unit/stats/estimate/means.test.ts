import { describe, expect, test } from "vitest";
import {
  cr2Difference,
  cr2Mean,
  estimate,
  htzWald,
  medianInterval,
  pairedT,
  patientBootstrap,
  patientMean,
  permutationDifference,
  plainMean,
  quantile,
  ratioOfSums,
  signFlip,
  welch,
  wilsonClustered,
} from "@/lib/stats";
import { codes, range, scattered } from "./rows";

describe("mean", () => {
  const ask = (values: readonly number[], patient: readonly number[]) => estimate({ situation: "mean", values, patient });
  test("below three patients the values lead, and nothing has limits", () => {
    const { lead, records, notes, test: asked } = ask([30, 31, 40], [1, 1, 2]);
    expect([lead, records.mean.lower, asked]).toEqual(["values", null, null]);
    expect(notes).toEqual([{ code: "too-few-for-interval", patients: 2, needed: 3 }]);
  });
  test("df below four: the mean of patients leads, CR2 is still answered", () => {
    const values = [30, 31, 40, 35, 28];
    const patient = [1, 1, 2, 3, 4];
    const { lead, records, notes } = ask(values, patient);
    expect(lead).toBe("patientMean");
    expect(records).toEqual({
      mean: cr2Mean({ values, patient }),
      patientMean: patientMean({ values, patient }),
      plain: plainMean({ values, patient }),
    });
    expect(records.mean.lower).not.toBeNull();
    expect(codes(notes)).toContain("few-patients");
  });
  test("df of exactly four: the mean of segments leads", () => {
    const { lead, records, notes } = ask([30, 31, 40, 35, 28], [1, 2, 3, 4, 5]);
    expect([lead, records.mean.df]).toEqual(["mean", 4]);
    expect(codes(notes)).toEqual(["clustered"]);
  });
  test("two means over half an error apart are said to differ, at less they aren't", () => {
    const patient = [1, 1, 1, 1, 2, 3, 4, 5, 6];
    expect(codes(ask([50, 52, 51, 49, 30, 31, 29, 30, 32], patient).notes)).toContain("bilateral-patients-differ");
    expect(codes(ask([31, 29, 30, 30, 20, 40, 25, 35, 30], patient).notes)).not.toContain("bilateral-patients-differ");
  });
  test("the confidence asked for reaches every record", () => {
    const values = scattered(9);
    const { records } = estimate({ situation: "mean", values, patient: range(9), confidence: 0.8 });
    expect(records.mean).toEqual(cr2Mean({ values, patient: range(9), confidence: 0.8 }));
    expect(records.plain).toEqual(plainMean({ values, patient: range(9), confidence: 0.8 }));
    expect(records.patientMean).toEqual(patientMean({ values, patient: range(9), confidence: 0.8 }));
  });
});

describe("median, fully observed", () => {
  const ask = (n: number, patients: number) =>
    estimate({ situation: "median", values: scattered(n), patient: range(n).map((i) => i % patients), seed: 3 });
  test("twenty patients with several values: patients are resampled", () => {
    const { lead, records, notes } = ask(30, 20);
    const patient = range(30).map((i) => i % 20);
    expect(lead).toBe("quantiles");
    expect(records.interval).toEqual(patientBootstrap({ values: scattered(30), patient, statistic: "quantile", p: 0.5, seed: 3 }));
    expect(notes).toEqual([]);
  });
  test("one value a patient: order statistics", () => {
    expect(ask(20, 20).records.interval).toEqual(medianInterval({ values: scattered(20) }));
  });
  test("nineteen patients: range and quartiles, no interval", () => {
    const { records, notes, lead } = ask(30, 19);
    const q = (p: number) => quantile({ values: scattered(30), p }).estimate;
    const sorted = [...scattered(30)].sort((a, b) => a - b);
    expect(records.quantiles).toEqual({
      least: sorted[0],
      lowerQuartile: q(0.25),
      median: q(0.5),
      upperQuartile: q(0.75),
      greatest: sorted[29],
      n: 30,
    });
    expect([records.interval, lead]).toEqual([null, "quantiles"]);
    expect(notes).toEqual([{ code: "too-few-for-interval", patients: 19, needed: 20 }]);
  });
  test("two patients: the values", () => {
    expect(ask(4, 2).lead).toBe("values");
    expect(ask(4, 3).lead).toBe("quantiles");
  });
});

describe("ratio of sums", () => {
  const ask = (patients: number) => {
    const rows = { numerator: scattered(12, 100, 80), denominator: scattered(12, 3, 4), patient: range(12).map((i) => i % patients) };
    return { rows, answer: estimate({ situation: "ratio-of-sums", ...rows }) };
  };
  test.each([
    [2, "values", true],
    [5, "ratio", true],
    [6, "ratio", false],
  ])("%i patients: %s leads, without limits %s", (patients, lead, without) => {
    const { rows, answer } = ask(patients);
    expect(answer.records.ratio).toEqual(ratioOfSums(rows));
    expect([answer.lead, answer.records.ratio.lower === null]).toEqual([lead, without]);
    expect(codes(answer.notes)).toEqual(without ? ["too-few-for-interval"] : []);
  });
});

describe("two means, no patient in both", () => {
  const values = scattered(20);
  const group = range(20).map((i) => (i % 2 ? "b" : "a"));
  const patient = range(20).map((i) => (i % 2 ? 100 : 0) + (i % 10));
  const base = { situation: "two-means", values, group, patient, between: ["a", "b"], seed: 5 } as const;
  test("CR2 leads, patient means by Welch stand beside, no test unless asked for", () => {
    const { lead, records, test: asked, notes } = estimate(base);
    const rows = { values, group, patient, between: ["a", "b"] as const };
    expect(lead).toBe("difference");
    expect(records).toEqual({ difference: cr2Difference(rows), patientMeans: welch(rows), withinPatients: null });
    expect(asked).toBeNull();
    expect(codes(notes)).toEqual(["clustered"]);
    expect(estimate({ ...base, test: true }).test).toEqual(permutationDifference({ ...rows, seed: 5 }));
  });
  test("three patients against eight: df below four, patient means lead", () => {
    const { lead, records, notes } = estimate({
      ...base,
      values: scattered(11),
      group: range(11).map((i) => (i < 3 ? "a" : "b")),
      patient: range(11),
    });
    expect(lead).toBe("patientMeans");
    expect(notes).toEqual([
      { code: "clustered", df: records.difference.df },
      { code: "few-patients", df: records.difference.df },
    ]);
  });
  test("three against three: df of exactly four, the difference leads", () => {
    const { lead, records } = estimate({ ...base, values: [1, 2, 3, 4, 5, 9], group: [..."aaabbb"], patient: range(6) });
    expect([lead, records.difference.df]).toEqual(["difference", 4]);
  });
  test("fewer than three patients in a group: the values, and no test even when asked for", () => {
    const {
      lead,
      test: asked,
      notes,
    } = estimate({
      ...base,
      values: [1, 2, 3, 4, 5],
      group: ["a", "a", "b", "b", "b"],
      patient: [1, 2, 3, 4, 5],
      test: true,
    });
    expect([lead, asked]).toEqual(["values", null]);
    expect(notes).toEqual([{ code: "too-few-for-interval", patients: 2, needed: 3 }]);
  });
  test("an index whose gains differ by more than 0.2 of their spread bears the note, one whose gains agree doesn't", () => {
    const apart = group.map((label, i) => (label === "a" ? 4 : 6) + (i % 5) / 10);
    const alike = range(20).map((i) => 5 + Math.floor(i / 2) / 10);
    expect(codes(estimate({ ...base, gains: apart }).notes)).toContain("shared-denominator");
    expect(codes(estimate({ ...base, gains: alike }).notes)).not.toContain("shared-denominator");
    // no spread at all but a difference: further apart than any spread
    expect(codes(estimate({ ...base, gains: group.map((label) => (label === "a" ? 4 : 5)) }).notes)).toContain("shared-denominator");
  });
});

describe("two means, shared patients", () => {
  const ask = (both: number, asked = false) => {
    const patient = [...range(both), ...range(both), 50, 51, 52, 60, 61];
    const group = [...range(both).map(() => "a"), ...range(both).map(() => "b"), "a", "a", "a", "b", "b"];
    const values = scattered(patient.length);
    const rows = { values, group, patient, between: ["a", "b"] as const };
    return { rows, answer: estimate({ situation: "two-means", ...rows, seed: 2, test: asked }) };
  };
  test("five in both: the difference within patients leads, tested by turning signs", () => {
    const { rows, answer } = ask(5, true);
    expect(answer.lead).toBe("withinPatients");
    expect(answer.records).toEqual({ difference: cr2Difference(rows), patientMeans: null, withinPatients: pairedT(rows) });
    expect(answer.test).toEqual(signFlip({ ...rows, seed: 2 }));
    expect(answer.notes).toContainEqual({ code: "patients-in-both", patients: 5 });
    expect(codes(answer.notes)).not.toContain("fallback-used");
    expect(ask(5).answer.test).toBeNull();
  });
  test("four in both: CR2 over all leads, and why", () => {
    const { answer } = ask(4);
    expect(answer.lead).toBe("difference");
    expect(answer.notes).toContainEqual({ code: "fallback-used", because: "4 patients in both groups, 5 needed" });
  });
  test("too few for either: the values", () => {
    const { lead } = estimate({
      situation: "two-means",
      values: [1, 2, 3],
      group: ["a", "b", "a"],
      patient: [1, 1, 2],
      seed: 1,
    });
    expect(lead).toBe("values");
  });
});

describe("three groups and more", () => {
  const values = scattered(36);
  const group = range(36).map((i) => "abc"[i % 3] as string);
  const patient = range(36).map((i) => (i % 3) * 100 + (i % 12));
  const base = { situation: "several-means", values, group, patient, seed: 4 } as const;
  test("each mean, and each against all others; HTZ when asked for", () => {
    const { lead, records, test: asked } = estimate({ ...base, test: true });
    expect(lead).toBe("means");
    expect(records.means.map(({ label }) => label)).toEqual(["a", "b", "c"]);
    const ofB = range(36).filter((i) => i % 3 === 1);
    expect(records.means[1]?.mean).toEqual(
      cr2Mean({ values: ofB.map((i) => values[i] as number), patient: ofB.map((i) => patient[i] as number) }),
    );
    const sides = group.map((one) => (one === "b" ? 1 : 2));
    const direct = cr2Difference({ values, group: sides, patient, between: [1, 2] });
    expect([records.againstOthers[1]?.difference.estimate, records.againstOthers[1]?.difference.lower]).toEqual([
      direct.estimate,
      direct.lower,
    ]);
    const design = group.map((one) => [one === "b" ? 1 : 0, one === "c" ? 1 : 0]);
    expect(asked).toEqual(htzWald({ values, patient, design, columns: [0, 1] }));
    expect(estimate(base).test).toBeNull();
  });
  test("where the Wald test can't be had, patients are permuted and the least p stands after Holm", () => {
    const few = { values: [1, 2, 3, 7, 8, 9, 4, 5, 6], group: [..."aaabbbccc"], patient: range(9), seed: 4 };
    const patients = [...range(3), ...range(3).map((i) => 3 + (i > 1 ? 1 : 0)), ...range(3).map(() => 9)];
    const { test: asked } = estimate({ situation: "several-means", ...few, patient: patients, test: true });
    expect(asked?.method).toContain("Holm");
    expect(codes(asked?.notes ?? [])).toContain("fallback-used");
  });
  test("gains of one group apart from all others", () => {
    const gains = group.map((one, i) => (one === "c" ? 8 : 5) + (i % 4) / 10);
    expect(codes(estimate({ ...base, gains }).notes)).toContain("shared-denominator");
    expect(codes(estimate(base).notes)).not.toContain("shared-denominator");
  });
  test("two groups are another situation", () => {
    expect(() => estimate({ ...base, group: group.map((one) => (one === "c" ? "a" : one)) })).toThrow(
      "estimate requires at least three groups for several-means, received 2",
    );
  });
});

describe("gain error", () => {
  const make = (patients: number) => ({
    errorMm: scattered(30, -8, 14),
    patient: range(30).map((i) => i % patients),
    toleranceMm: 5,
  });
  test("twenty patients: bias, share within tolerance, spread, limits of agreement", () => {
    const rows = make(20);
    const { lead, records, notes } = estimate({ situation: "gain-error", ...rows, stoppedEarly: range(30).map((i) => (i === 4 ? 1 : 0)) });
    expect(lead).toBe("bias");
    expect(records.bias).toEqual(cr2Mean({ values: rows.errorMm, patient: rows.patient }));
    const within = rows.errorMm.map((error) => (error >= -5 && error <= 5 ? 1 : 0));
    expect(records.withinTolerance).toEqual(wilsonClustered({ event: within, patient: rows.patient }));
    const q = (p: number) => quantile({ values: rows.errorMm, p }).estimate;
    expect(records.spread).toEqual({ p5: q(0.05), median: q(0.5), p95: q(0.95) });
    expect(records.limits?.limitLower as number).toBeLessThan(records.limits?.limitUpper as number);
    expect(codes(notes)).toEqual(["clustered", "early-stops-listed"]);
  });
  test("an error at the tolerance lies within", () => {
    const { records } = estimate({ situation: "gain-error", errorMm: [-5, 5, 5.1, 0], patient: range(4), toleranceMm: 5 });
    expect(records.withinTolerance.x).toBe(3);
  });
  test("nineteen patients: no limits of agreement; two: the values", () => {
    const { records, notes, lead } = estimate({ situation: "gain-error", ...make(19) });
    expect([records.limits, lead]).toEqual([null, "bias"]);
    expect(notes).toContainEqual({ code: "too-few-for-interval", patients: 19, needed: 20 });
    expect(estimate({ situation: "gain-error", ...make(2) }).lead).toBe("values");
    expect(codes(estimate({ situation: "gain-error", ...make(20), stoppedEarly: range(30).map(() => 0) }).notes)).toEqual(["clustered"]);
  });
});
