import { describe, expect, test } from "vitest";
import {
  aalenJohansen,
  cr2Difference,
  cr2Mean,
  cr2Regression,
  estimate,
  exactRateRatio,
  fisherExact,
  grayTest,
  holm,
  htzWald,
  kaplanMeier,
  logRank,
  medianBounds,
  medianInterval,
  type Note,
  noteText,
  pairedT,
  patientBootstrap,
  patientMean,
  permutationDifference,
  plainMean,
  quantile,
  ratioOfSums,
  riskDifference,
  riskRatio,
  signFlip,
  thresholds,
  timeModel,
  turnbull,
  welch,
  wilson,
  wilsonClustered,
} from "@/lib/stats";

const codes = (notes: readonly Note[]) => notes.map(({ code }) => code);
const range = (n: number) => Array.from({ length: n }, (_, i) => i);
/** Numbers that look irregular and are the same each time. */
const scattered = (n: number, from = 20, width = 30) => range(n).map((i) => from + ((i * 37 + (i % 7) * 11) % (width * 10)) / 10);

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

/** Forty bones of forty patients in two groups, days growing with gain; `unhealed` of them not healed. */
function healing(unhealed: number, patients = 40, n = 40) {
  const gainCm = range(n).map((i) => 3 + (i % 9) / 2);
  const group = range(n).map((i) => (i % 2 ? "b" : "a"));
  return {
    days: range(n).map((i) => Math.round((20 + 30 * (gainCm[i] as number) ** 0.7) * (i % 2 ? 1 : 1.2) * (1 + ((i * 13) % 7) / 25))),
    healed: range(n).map((i) => (i < unhealed ? 0 : 1)),
    gainCm,
    group,
    patient: range(n).map((i) => (i % 2) * 100 + (Math.floor(i / 2) % (patients / 2))),
    between: ["a", "b"] as const,
    seed: 9,
  };
}

describe("healing compared", () => {
  const ask = (rows: ReturnType<typeof healing>, asked = false) => estimate({ situation: "healing-compared", ...rows, test: asked });

  test("nine in ten healed: days at equal gain, the unhealed left out and counted", () => {
    const rows = healing(4);
    const { lead, records, notes, test: asked } = ask(rows, true);
    expect([lead, records.timeModel]).toEqual(["equalGain", null]);
    const keep = range(40).filter((i) => i >= 4);
    const pick = <T>(values: readonly T[]) => keep.map((i) => values[i] as T);
    const design = keep.map((i) => [Math.log(rows.gainCm[i] as number), rows.group[i] === "a" ? 1 : 0]);
    const direct = cr2Regression({
      values: pick(rows.days).map(Math.log),
      patient: pick(rows.patient),
      design,
      names: ["log cm", "group"],
    });
    expect(records.equalGain?.model).toEqual(direct);
    expect(records.equalGain?.ratio.estimate).toBeCloseTo(Math.exp(direct.coefficients[2]?.estimate as number), 12);
    expect(records.equalGain?.ratio.lower).toBeCloseTo(Math.exp(direct.coefficients[2]?.lower as number), 12);
    expect(records.equalGain?.beta).toEqual(direct.coefficients[1]);
    const straight = cr2Regression({
      values: pick(rows.days),
      patient: pick(rows.patient),
      design: pick(rows.gainCm).map((cm) => [cm]),
      names: ["cm"],
    });
    expect([records.equalGain?.fixedDays, records.equalGain?.daysPerCm]).toEqual(straight.coefficients);
    expect(notes).toContainEqual({ code: "unhealed-left-out", unhealed: 4, n: 40 });
    expect(codes(notes)).toContain("index-depends-on-gain");
    expect(asked?.p).toBe(direct.coefficients[2]?.p);
  });

  test("fewer healed: the log-normal time model with the unhealed in", () => {
    const rows = healing(5);
    const { lead, records, notes, test: asked } = ask(rows, true);
    expect([lead, records.equalGain]).toEqual(["timeModel", null]);
    const design = rows.gainCm.map((cm, i) => [Math.log(cm), rows.group[i] === "a" ? 1 : 0]);
    const direct = timeModel({ times: rows.days, event: rows.healed, patient: rows.patient, design, names: ["log cm", "group"] });
    expect(records.timeModel?.model).toEqual(direct);
    const group = direct.coefficients[2];
    expect([records.timeModel?.ratio?.estimate, records.timeModel?.ratio?.lower]).toEqual([group?.timeRatio, group?.timeRatioLower]);
    expect(codes(notes)).toContain("log-normal");
    expect(records.timeModel?.curves.map(({ label }) => label)).toEqual(["a", "b"]);
    expect(asked?.method).toContain("permutation of whole patients");
    expect(asked?.p).toBeLessThan(0.05);
    expect(ask(rows).test).toBeNull();
  });

  test("below twenty patients the limits of the time ratio come from resampled patients", { timeout: 60_000 }, () => {
    const rows = healing(5, 18);
    const { ratio, model } = ask(rows).records.timeModel ?? {};
    expect(ratio?.method).toContain("patient bootstrap (1999)");
    expect(ratio?.lower).not.toBe(model?.coefficients[2]?.timeRatioLower);
    expect(ratio?.lower as number).toBeLessThan(ratio?.estimate as number);
    expect(ratio?.upper as number).toBeGreaterThan(ratio?.estimate as number);
    expect(ask({ ...rows, seed: 10 }).records.timeModel?.ratio?.lower).not.toEqual(ratio?.lower);
  });

  test("films make it interval-censored", () => {
    const rows = healing(6);
    const lastUnhealed = rows.days.map((day) => day - 28);
    const { records } = estimate({ situation: "healing-compared", ...rows, lastUnhealed });
    const design = rows.gainCm.map((cm, i) => [Math.log(cm), rows.group[i] === "a" ? 1 : 0]);
    const after = rows.days.map((day, i) => (rows.healed[i] ? day - 28 : day));
    const by = rows.days.map((day, i) => (rows.healed[i] ? day : null));
    expect(records.timeModel?.model).toEqual(timeModel({ after, by, patient: rows.patient, design, names: ["log cm", "group"] }));
  });

  test("a group without any healed bone: curves only", () => {
    const rows = healing(0);
    const healed = rows.group.map((label) => (label === "a" ? 0 : 1));
    const { lead, records, notes, test: asked } = ask({ ...rows, healed }, true);
    expect([lead, records.timeModel?.model, records.timeModel?.ratio, asked]).toEqual(["timeModel", null, null, null]);
    expect(records.timeModel?.curves).toHaveLength(2);
    expect(notes).toEqual([{ code: "fallback-used", because: "the time model can't be fitted, curves only" }]);
  });

  test("few patients: patients permuted on what gain leaves over", () => {
    const all = healing(0, 40, 40);
    const rows = {
      ...all,
      group: all.group.map((_, i) => (i < 4 ? "a" : "b")),
      patient: range(40).map((i) => Math.floor(i < 4 ? i / 1.4 : i)),
    };
    const { test: asked, records } = ask(rows, true);
    expect(records.equalGain?.model.coefficients[2]?.df as number).toBeLessThan(4);
    expect(codes(asked?.notes ?? [])).toContain("fallback-used");
    expect(asked?.method).toContain("permutation");
  });

  test("patients in both groups can't be permuted: the interval is read", () => {
    const rows = healing(8);
    const { test: asked } = ask({ ...rows, patient: range(40).map((i) => Math.floor(i / 2)) }, true);
    expect(asked?.p).toBeNull();
    expect(asked?.notes).toEqual([{ code: "not-estimable", because: "patients are in both groups" }]);
  });

  test("fewer than three patients in a group: the values", () => {
    const rows = healing(0, 4);
    expect(ask(rows)).toMatchObject({ lead: "values", records: { equalGain: null, timeModel: null } });
    expect(ask(rows).notes).toEqual([{ code: "too-few-for-interval", patients: 2, needed: 3 }]);
  });

  test.each([
    [{ days: [1] }, "estimate requires healing rows of one length (1), received 40"],
    [{ covariates: [{ field: "age", values: [1] }] }, "estimate requires age for each row (40), received 1"],
    [{ gainCm: range(40).map(() => 0) }, "estimate requires days and gains above zero, received another"],
  ])("%#: refused", (wrong, message) => {
    expect(() => ask({ ...healing(0), ...wrong })).toThrow(message);
  });
});

describe("adjusted healing", () => {
  const rows = healing(0);
  const age = { field: "age", values: range(40).map((i) => (i === 3 ? null : 10 + ((i * 7) % 20))) };
  const bone = { field: "bone", values: range(40).map((i) => (i % 4 < 2 ? "femur" : "tibia")) };
  const ask = (...covariates: { field: string; values: readonly (number | string | null)[]; knownLater?: boolean }[]) =>
    estimate({ situation: "healing-compared", ...rows, covariates });

  test("covariates stand in the model, rows without them are left out and counted", () => {
    const { records, notes } = ask(age, bone);
    const keep = range(40).filter((i) => i !== 3);
    const design = keep.map((i) => [
      Math.log(rows.gainCm[i] as number),
      rows.group[i] === "a" ? 1 : 0,
      age.values[i] as number,
      bone.values[i] === "tibia" ? 1 : 0,
    ]);
    const direct = cr2Regression({
      values: keep.map((i) => Math.log(rows.days[i] as number)),
      patient: keep.map((i) => rows.patient[i] as number),
      design,
      names: ["log cm", "group", "age", "bone: tibia"],
    });
    expect(records.equalGain?.model).toEqual(direct);
    expect(notes).toContainEqual({ code: "left-out", n: 1 });
  });

  test("one column for ten patients, not more", () => {
    const number = (field: string) => ({ field, values: range(40).map((i) => (i * i * (field.length + 3) + i) % 13) });
    expect(ask(number("a"), number("bb"), number("ccc"), number("dddd")).records.equalGain).not.toBeNull();
    const five = ask(number("a"), number("bb"), number("ccc"), number("dddd"), number("eeeee"));
    expect(five.records.equalGain).toBeNull();
    expect(five.notes).toEqual([{ code: "too-many-covariates", columns: 5, patients: 40, allowed: 4 }]);
  });

  test("a covariate known later: no adjusted estimate", () => {
    const { records, notes, lead } = ask({ ...bone, knownLater: true });
    expect([records.equalGain, lead]).toEqual([null, "values"]);
    expect(notes).toEqual([{ code: "known-later", field: "bone" }]);
  });
});

describe("curve in days", () => {
  const rows = healing(8);
  const base = {
    situation: "healing-curve",
    days: rows.days,
    healed: rows.healed,
    gainCm: rows.gainCm,
    patient: rows.patient,
    seed: 1,
  } as const;
  test("everyone together: Kaplan–Meier by patient, gains beside, the tail cut below five at risk", () => {
    const { lead, records, notes, test: asked } = estimate({ ...base, missing: 3, test: true });
    const [all] = records.curves;
    expect(all?.curve).toEqual(kaplanMeier({ times: rows.days, event: rows.healed, patient: rows.patient }));
    const atRisk = all?.curve.curve.atRisk as number[];
    expect(atRisk[(all?.shownSteps as number) - 1]).toBeGreaterThanOrEqual(5);
    expect(atRisk[all?.shownSteps as number]).toBeLessThan(5);
    expect(all?.gainCm.median).toBe(quantile({ values: rows.gainCm, p: 0.5 }).estimate);
    expect(notes).toEqual([
      { code: "censored-and-missing", censored: 8, n: 40, missing: 3 },
      { code: "few-at-risk", needed: 5 },
    ]);
    expect([lead, asked, all?.betweenFilms]).toEqual(["curves", null, null]);
  });
  test("two groups: robust score, and film intervals by Turnbull", () => {
    const lastUnhealed = rows.days.map((day) => day - 30);
    const { records, test: asked } = estimate({ ...base, group: rows.group, lastUnhealed, test: true });
    expect(asked).toEqual(logRank({ times: rows.days, event: rows.healed, group: rows.group, patient: rows.patient }));
    const own = range(40).filter((i) => rows.group[i] === "a");
    const direct = turnbull({
      after: own.map((i) => (rows.healed[i] ? (rows.days[i] as number) - 30 : (rows.days[i] as number))),
      by: own.map((i) => (rows.healed[i] ? (rows.days[i] as number) : null)),
      patient: own.map((i) => rows.patient[i] as number),
    });
    expect(records.curves[0]?.betweenFilms).toEqual(direct);
    expect(records.curves.map(({ label, n, patients, censored }) => [label, n, patients, censored])).toEqual([
      ["a", 20, 20, 4],
      ["b", 20, 20, 4],
    ]);
  });
  test("below ten patients: curve and n only, and patients permuted on the scores", () => {
    const few = healing(4, 18);
    const { records, notes, test: asked } = estimate({ situation: "healing-curve", ...few, test: true });
    const [a] = records.curves;
    expect([a?.patients, a?.curve.lower, a?.curve.upper]).toEqual([9, null, null]);
    expect(new Set(a?.curve.curve.se)).toEqual(new Set([null]));
    expect(new Set(a?.curve.curve.lower)).toEqual(new Set([null]));
    expect(a?.curve.estimate).not.toBeNull();
    expect(notes).toContainEqual({ code: "too-few-for-interval", patients: 9, needed: 10 });
    expect(asked?.method).toContain("permutation of whole patients on log-rank scores");
    expect(asked?.p).toBeGreaterThan(0);
  });
  test("columns of unlike length are refused", () => {
    expect(() => estimate({ ...base, healed: [1] })).toThrow("estimate requires each column as long as days (40), received 1");
  });
});

describe("median index with unhealed bones", () => {
  const rows = healing(8);
  const base = { situation: "median-index", days: rows.days, healed: rows.healed, gainCm: rows.gainCm, patient: rows.patient } as const;
  test("bounds, and the time model's days at the median gain", () => {
    const { lead, records, notes } = estimate(base);
    expect(lead).toBe("atMedianGain");
    const index = rows.days.map((day, i) => day / (rows.gainCm[i] as number));
    expect(records.bounds).toEqual(medianBounds({ times: index, event: rows.healed, patient: rows.patient }));
    const median = quantile({ values: rows.gainCm, p: 0.5 }).estimate;
    const design = rows.gainCm.map((cm) => [Math.log(cm)]);
    const model = timeModel({
      times: rows.days,
      event: rows.healed,
      patient: rows.patient,
      design,
      names: ["log cm"],
      at: [Math.log(median)],
    });
    expect(records.atMedianGain).toEqual({
      gainCm: median,
      days: model.estimate,
      lower: model.lower,
      upper: model.upper,
      daysPerCm: model.estimate / median,
      model,
    });
    expect(codes(notes)).toEqual(["heavily-censored", "index-depends-on-gain"]);
  });
  test("at a gain of the caller's choice", () => {
    expect(estimate({ ...base, atGainCm: 5 }).records.atMedianGain?.gainCm).toBe(5);
  });
  test("equal gains, or nobody healed: bounds only", () => {
    const { lead, records, notes } = estimate({ ...base, gainCm: range(40).map(() => 5) });
    expect([lead, records.atMedianGain]).toEqual(["bounds", null]);
    expect(notes).toContainEqual({ code: "fallback-used", because: "the time model can't be fitted, bounds only" });
    expect(estimate({ ...base, healed: range(40).map(() => 0) }).lead).toBe("bounds");
  });
});

describe("competing events", () => {
  const make = (patients: number, n = 40) => ({
    days: scattered(n, 50, 200),
    event: range(n).map((i) => [1, 1, 2, 0][i % 4] as number),
    patient: range(n).map((i) => i % patients),
    causes: ["healed", "rescued"],
    seed: 6,
  });
  test("from twenty patients resampled, from ten by the jackknife, below counts only", () => {
    const twenty = make(20);
    const rows = { times: twenty.days, event: twenty.event, patient: twenty.patient };
    const many = estimate({ situation: "competing", ...twenty }).records.groups[0];
    expect(many?.incidence).toEqual(aalenJohansen({ ...rows, variance: "bootstrap", seed: 6 }));
    const ten = make(10);
    const some = estimate({ situation: "competing", ...ten }).records.groups[0];
    expect(some?.incidence).toEqual(aalenJohansen({ times: ten.days, event: ten.event, patient: ten.patient }));
    const { records, notes, lead } = estimate({ situation: "competing", ...make(9) });
    expect(records.groups[0]).toEqual({ label: "all", patients: 9, counts: [10, 20, 10], incidence: null });
    expect(lead).toBe("groups");
    expect(notes).toEqual([
      { code: "competing", what: "rescued" },
      { code: "too-few-for-interval", patients: 9, needed: 10 },
    ]);
  });
  test("Gray only with one bone a patient", () => {
    const group = range(40).map((i) => (i % 3 ? "a" : "b"));
    const single = make(40);
    const { test: gray } = estimate({ situation: "competing", ...single, group, test: true });
    expect(gray).toEqual(grayTest({ times: single.days, event: single.event, group, patient: single.patient }));
    const { test: none } = estimate({ situation: "competing", ...make(30), group, test: true });
    expect([none?.p, codes(none?.notes ?? [])]).toEqual([null, ["not-estimable"]]);
    expect(estimate({ situation: "competing", ...single, group }).test).toBeNull();
    expect(estimate({ situation: "competing", ...single, test: true }).test).toBeNull();
  });
  test("one cause has no competitor", () => {
    expect(() => estimate({ situation: "competing", ...make(20), causes: ["healed"] })).toThrow(
      "estimate requires at least two causes for competing, received 1",
    );
  });
});

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

test("another situation is refused by name", () => {
  const other = { situation: "funnel" } as unknown as { situation: "mean"; values: number[]; patient: number[] };
  expect(() => estimate(other)).toThrow(/^estimate requires a situation \(mean, median, .*gain-error\), received another$/);
});

test("every note that a situation gives has its sentence", () => {
  const given: Note[] = [
    { code: "patients-in-both", patients: 5 },
    { code: "unhealed-left-out", unhealed: 4, n: 40 },
    { code: "log-normal" },
    { code: "censored-and-missing", censored: 8, n: 40, missing: 3 },
    { code: "competing", what: "rescued" },
    { code: "design-effect", deff: 1.4321 },
    { code: "too-many-covariates", columns: 5, patients: 40, allowed: 4 },
    { code: "left-out", n: 1 },
  ];
  expect(given.map(noteText)).toEqual([
    "5 patients have rows in both groups.",
    "4 of 40 had not healed and are left out.",
    "Log-normal model of time: its fit is shown by the q–q figure.",
    "8 of 40 censored, 3 missing.",
    "Competing: rescued. They end the time at risk and are not censored.",
    "Design effect 1.4.",
    "5 columns for 40 patients: at most 4 can be adjusted for, so no adjusted estimate is given.",
    "1 rows left out because a covariate is not recorded.",
  ]);
});

test("the thresholds are those of the methods page", () => {
  expect(thresholds).toMatchObject({
    patientsForInterval: 3,
    dfForSegmentMean: 4,
    patientsInBothGroups: 5,
    patientsForRatio: 6,
    patientsForCurve: 10,
    patientsForBootstrap: 20,
    standardErrorsApart: 0.5,
    shareCensored: 0.1,
    shareHealed: 0.9,
    atRiskShown: 5,
    gainsApart: 0.2,
    patientsPerParameter: 10,
  });
});

test("Holm's least p is never below the smallest of its parts", () => {
  expect(Math.min(...holm({ p: [0.2, 0.03, 0.5] }).adjusted)).toBeCloseTo(0.09, 12);
});
