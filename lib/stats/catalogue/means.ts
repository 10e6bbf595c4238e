import * as z from "zod";
import { cr2Difference } from "../cr2-difference";
import { cr2Mean } from "../cr2-mean";
import { cr2Regression } from "../cr2-regression";
import { htzWald } from "../htz-wald";
import { patientMean } from "../patient-mean";
import { plainMean } from "../plain-mean";
import { quantile } from "../quantile";
import { ratioOfSums } from "../ratio-of-sums";
import { method } from "./entry";
import { between, confidence, design, group, numbers, patient, patientOrNone, values } from "./fields";

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
    "cr2-difference",
    "Difference of two means, clustered by patient",
    z.strictObject({ values, group, patient, between, confidence }),
    cr2Difference,
    {
      values: [...days.values, 50, 41.2, 38, 47],
      group: ["a", "a", "a", "a", "a", "a", "a", "b", "b", "b", "b"],
      patient: [1, 1, 2, 3, 4, 5, 5, 6, 7, 8, 8],
    },
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
