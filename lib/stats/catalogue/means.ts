import * as z from "zod";
import { cr2Difference } from "../cr2-difference";
import { cr2Mean } from "../cr2-mean";
import { cr2Regression } from "../cr2-regression";
import { htzWald } from "../htz-wald";
import { medianInterval } from "../median-interval";
import { pairedT } from "../paired-t";
import { patientBootstrap } from "../patient-bootstrap";
import { patientMean } from "../patient-mean";
import { permutationDifference } from "../permutation-difference";
import { plainMean } from "../plain-mean";
import { quantile } from "../quantile";
import { ratioOfSums } from "../ratio-of-sums";
import { signFlip } from "../sign-flip";
import { smallestDetectableDifference } from "../smallest-detectable-difference";
import { type StandardisedInput, standardisedDifference } from "../standardised-difference";
import { welch } from "../welch";
import { woodruffInterval } from "../woodruff-interval";
import { method } from "./entry";
import { between, confidence, design, group, numbers, patient, patientOrNone, seed, values } from "./fields";

const mean = z.strictObject({ values, patient, confidence });
const days = { values: [31.5, 28, 40.2, 36.1, 33, 45.7, 29.9], patient: ["a", "a", "b", "c", "d", "e", "e"] };
const regression = {
  values,
  design,
  patient,
  weights: z.array(z.number().positive()).describe("inverse variances up to a factor").exactOptional(),
  exposure: z.array(z.number().positive()).describe("what a count was seen over; log link only").exactOptional(),
  link: z.enum(["identity", "log", "logit"]).default("identity"),
  intercept: z.boolean().default(true),
};
const slope = { ...days, design: [[2.1], [3], [4.4], [5.2], [3.8], [6], [2.5]] };

const apart = {
  values: [...days.values, 50, 41.2, 38, 47],
  group: ["a", "a", "a", "a", "a", "a", "a", "b", "b", "b", "b"],
  patient: [1, 1, 2, 3, 4, 5, 5, 6, 7, 8, 8],
};
const shared = {
  values: [30, 34, 28, 35, 41, 40, 33, 39],
  group: ["a", "b", "a", "b", "a", "b", "a", "b"],
  patient: [1, 1, 2, 2, 3, 3, 4, 4],
};
const twoGroups = z.strictObject({ values, group, patient, between, confidence });
const permuted = z.strictObject({ values, group, patient, between, seed });

export const means = [
  method("cr2-mean", "Mean of segments, clustered by patient", mean, cr2Mean, days),
  method("patient-mean", "Mean of patient means", mean, patientMean, days),
  method(
    "plain-mean",
    "Mean, every value as another patient",
    z.strictObject({ values, patient: patientOrNone, confidence }),
    plainMean,
    days,
  ),
  method(
    "ratio-of-sums",
    "Ratio of two sums, such as days over centimetres, clustered by patient",
    z.strictObject({ numerator: numbers, denominator: numbers, patient, confidence }),
    ratioOfSums,
    { numerator: [150, 180, 240, 120, 200, 310, 95], denominator: [4, 5, 6, 3.5, 5.5, 8, 3], patient: [1, 2, 3, 4, 5, 6, 6] },
  ),
  method(
    "quantile",
    "A quantile of values",
    z.strictObject({ values, p: z.number().min(0).max(1), type: z.union([z.literal(7), z.literal(6)]).default(7) }),
    quantile,
    { values: days.values, p: 0.5 },
  ),
  method(
    "median-interval",
    "The median of independent values, by order statistics",
    z.strictObject({ values, confidence }),
    medianInterval,
    {
      values: [...days.values, 38.8],
    },
  ),
  method(
    "woodruff-interval",
    "A quantile of clustered values with Woodruff’s interval",
    z.strictObject({ values, patient, p: z.number().gt(0).lt(1).default(0.5), confidence }),
    woodruffInterval,
    {
      values: Array.from({ length: 24 }, (_, i) => 28 + ((i * 7) % 19)),
      patient: Array.from({ length: 24 }, (_, i) => Math.min(i, 21)),
    },
  ),
  method("cr2-difference", "Difference of two means, clustered by patient", twoGroups, cr2Difference, apart),
  method("welch", "Difference of two means of patient means", twoGroups, welch, apart),
  method("paired-t", "Difference within patients who have values in both groups", twoGroups, pairedT, shared),
  method("permutation-difference", "Two means compared by exchanging whole patients", permuted, permutationDifference, {
    ...apart,
    seed: 1,
  }),
  method("sign-flip", "Within-patient difference tested by turning its sign", permuted, signFlip, { ...shared, seed: 1 }),
  method(
    "patient-bootstrap",
    "A mean or quantile with an interval from resampled patients",
    z.strictObject({
      values,
      patient,
      statistic: z.enum(["mean", "quantile"]).default("mean"),
      p: z.number().min(0).max(1).default(0.5),
      repeats: z.number().int().positive().default(9999),
      seed,
      confidence,
    }),
    patientBootstrap,
    {
      values: Array.from({ length: 24 }, (_, i) => 28 + ((i * 7) % 19)),
      patient: Array.from({ length: 24 }, (_, i) => Math.min(i, 21)),
      statistic: "quantile",
      repeats: 999,
      seed: 1,
    },
  ),
  method(
    "standardised-difference",
    "How far two groups differ in a characteristic, in its own spread",
    z.strictObject({
      kind: z.enum(["continuous", "binary", "levels"]),
      values: group.describe("numbers; of kind levels: codes without order, one a row"),
      group,
      between,
    }),
    // The method refuses texts where its kind asks for numbers.
    (input) => standardisedDifference(input as StandardisedInput),
    { kind: "continuous", values: apart.values, group: apart.group },
  ),
  method(
    "smallest-detectable-difference",
    "The difference that a comparison would find with a given power",
    z.strictObject({
      se: z.number().positive(),
      df: z.number().min(1),
      power: z.number().gt(0).lt(1).default(0.8),
      confidence,
    }),
    smallestDetectableDifference,
    { se: 2.4, df: 18.7 },
  ),
  method(
    "cr2-regression",
    "Regression with errors clustered by patient",
    z.strictObject({ ...regression, names: z.array(z.string()).exactOptional(), confidence }),
    cr2Regression,
    { ...slope, names: ["gainCm"] },
  ),
  method(
    "htz-wald",
    "Test of several coefficients at once, clustered by patient",
    z.strictObject({
      ...regression,
      columns: z.array(z.number().int().nonnegative()).describe("columns of design tested together, from 0"),
    }),
    htzWald,
    { ...slope, columns: [0] },
  ),
];
