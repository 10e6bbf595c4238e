import { expect, test } from "vitest";
import { estimate, holm, type Note, noteText, thresholds } from "@/lib/stats";

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
