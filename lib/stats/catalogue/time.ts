import * as z from "zod";
import { aalenJohansen } from "../aalen-johansen";
import { cox } from "../cox";
import { grayTest } from "../gray-test";
import { kaplanMeier } from "../kaplan-meier";
import { logRank } from "../log-rank";
import { medianBounds } from "../median-bounds";
import { restrictedMeanDifference } from "../restricted-mean-difference";
import { reverseKaplanMeier } from "../reverse-kaplan-meier";
import { timeModel } from "../time-model";
import { turnbull } from "../turnbull";
import { method } from "./entry";
import { between, confidence, design, entry, event, group, limits, patientOrNone as patient, seed, times } from "./fields";

const rows = { times, event, patient };
const positive = z.number().positive();
const tau = positive.describe("up to this time, in the unit of the times");
const curve = z.strictObject({ ...rows, entry, confidence, limits, tau: tau.exactOptional() });
const spans = {
  times: times.exactOptional(),
  event: event.exactOptional(),
  after: times.describe("not yet happened at this time").exactOptional(),
  by: z.array(z.number().nonnegative().nullable()).describe("happened by this time; null: not yet").exactOptional(),
  patient,
};
const healed = { times: [90, 110, 130, 150, 160, 200, 210, 240], event: [1, 1, 1, 0, 1, 1, 0, 1], patient: [1, 1, 2, 3, 4, 5, 6, 7] };
const arms = { ...healed, group: ["a", "b", "a", "b", "a", "b", "a", "b"] };

export const time = [
  method("kaplan-meier", "Share not yet healed by time, with its median", curve, kaplanMeier, { ...healed, tau: 200 }),
  method("reverse-kaplan-meier", "Median follow-up", curve, reverseKaplanMeier, healed),
  method(
    "median-bounds",
    "Median with bounds that need no assumption about the unhealed",
    z.strictObject({ ...rows, confidence }),
    medianBounds,
    healed,
  ),
  method("log-rank", "Curves of groups compared", z.strictObject({ ...rows, entry, group }), logRank, arms),
  method(
    "restricted-mean-difference",
    "Difference of two mean times up to a time",
    z.strictObject({ ...rows, entry, group, between, tau, confidence }),
    restrictedMeanDifference,
    { ...arms, tau: 200 },
  ),
  method(
    "aalen-johansen",
    "Cumulative incidence with competing events",
    z.strictObject({
      ...rows,
      entry,
      cause: positive.int().default(1),
      at: positive.exactOptional(),
      confidence,
      limits,
      variance: z.enum(["jackknife", "bootstrap"]).default("jackknife"),
      replicates: positive.int().default(1999),
      seed: seed.exactOptional(),
    }),
    aalenJohansen,
    { ...healed, event: [1, 1, 2, 0, 1, 2, 0, 1] },
  ),
  method(
    "gray-test",
    "Cumulative incidence of groups compared, one row a patient",
    z.strictObject({ ...rows, group, cause: positive.int().default(1) }),
    grayTest,
    {
      times: arms.times,
      group: arms.group,
      event: [1, 1, 2, 0, 1, 2, 0, 1],
    },
  ),
  method(
    "cox",
    "Proportional hazards regression, errors by patient; asked for only",
    z.strictObject({
      ...rows,
      entry,
      design,
      names: z.array(z.string()).exactOptional(),
      ties: z.enum(["efron", "breslow"]).default("efron"),
      confidence,
    }),
    cox,
    { ...healed, design: [[3], [6], [4.5], [5], [4], [6.5], [5.5], [3.5]], names: ["gainCm"] },
  ),
  method(
    "time-model",
    "Log-normal model of time, censored or known between two days",
    z.strictObject({
      ...spans,
      design: design.exactOptional(),
      names: z.array(z.string()).exactOptional(),
      at: z.array(z.number()).describe("covariates at which the median is asked for").exactOptional(),
      confidence,
    }),
    timeModel,
    { ...healed, design: [[3], [4], [4.5], [5], [5], [6.5], [6], [7]], names: ["gainCm"] },
  ),
  method("turnbull", "The curve when events are known only to lie between two days", z.strictObject(spans), turnbull, {
    after: [30, 60, 60, 90, 120],
    by: [60, 90, 120, 120, null],
  }),
];
