import { describe, expect, test } from "vitest";
import {
  aalenJohansen,
  cr2Regression,
  daysAtMedianGain,
  estimate,
  grayTest,
  kaplanMeier,
  logRank,
  medianBounds,
  quantile,
  timeModel,
  turnbull,
} from "@/lib/stats";
import { codes, range, scattered } from "./rows";

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
    expect(notes).toEqual([{ code: "fallback-used", because: "the time model can’t be fitted, curves only" }]);
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
  const ask = (...covariates: { field: string; values: readonly (number | string | null)[]; knownLater?: boolean; inModel?: boolean }[]) =>
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

  test("a covariate that the model holds already: no adjusted estimate", () => {
    const { records, notes, lead } = ask({ ...bone, inModel: true });
    expect([records.equalGain, lead]).toEqual([null, "values"]);
    expect(notes).toEqual([{ code: "in-model", field: "bone" }]);
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
  test("of two patients no model is fitted: the bounds stand alone, and it is said why", () => {
    const { lead, records, notes } = estimate({ ...base, patient: base.days.map((_, i) => i % 2) });
    expect([lead, records.atMedianGain]).toEqual(["bounds", null]);
    expect(notes).toContainEqual({ code: "too-few-for-interval", patients: 2, needed: 3 });
  });
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
      notes: [{ code: "index-depends-on-gain" }],
    });
    expect(daysAtMedianGain(base)).toEqual(records.atMedianGain);
    expect(codes(notes)).toEqual(["heavily-censored", "index-depends-on-gain"]);
  });
  test("at a gain of the caller's choice", () => {
    expect(estimate({ ...base, atGainCm: 5 }).records.atMedianGain?.gainCm).toBe(5);
  });
  test("equal gains, or nobody healed: bounds only", () => {
    const { lead, records, notes } = estimate({ ...base, gainCm: range(40).map(() => 5) });
    expect([lead, records.atMedianGain]).toEqual(["bounds", null]);
    expect(notes).toContainEqual({ code: "fallback-used", because: "the time model can’t be fitted, bounds only" });
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
