import * as z from "zod";
import { blandAltman } from "../bland-altman";
import { firthLogistic } from "../firth-logistic";
import { icc } from "../icc";
import { lms } from "../lms";
import { lmsInverse } from "../lms-inverse";
import { weightedKappa } from "../weighted-kappa";
import { method } from "./entry";
import { confidence, counts, design, event, patient, seed, values } from "./fields";

const at = z.number().describe("place in the table, such as the age, in the table’s own unit");
const growth = z.array(z.strictObject({ at: z.number(), L: z.number(), M: z.number().positive(), S: z.number().positive() }));
const rows = [
  { at: 9.5, L: -0.1600954, M: 9.476500305, S: 0.11218624 },
  { at: 10.5, L: -0.19, M: 9.73, S: 0.1118 },
];
const ratings = Array.from({ length: 21 }, (_, i) => i % 3);

export const agreement = [
  method("icc", "How alike values of one patient are, and the design effect", z.strictObject({ values, patient }), icc, {
    values: [31, 33, 28, 40, 41, 36, 35],
    patient: ["a", "a", "b", "c", "c", "d", "d"],
  }),
  method(
    "bland-altman",
    "Bias and limits of agreement, several differences a patient",
    z.strictObject({ values, patient, coverage: z.number().gt(0).lt(1).default(0.95), confidence }),
    blandAltman,
    { values: [-2, 1, 0.5, -4, 3, 2, -1], patient: ["a", "a", "b", "c", "d", "e", "e"] },
  ),
  method(
    "weighted-kappa",
    "Agreement of two ratings in ordered classes",
    z.strictObject({
      first: counts.describe("class a row, numbered from 0"),
      second: counts.describe("the same rows rated again"),
      patient,
      classes: z.number().int().min(2),
      seed,
      weights: z.enum(["unweighted", "linear", "quadratic"]).default("quadratic"),
      repeats: z.number().int().positive().default(9999),
      confidence,
    }),
    weightedKappa,
    {
      first: ratings,
      second: ratings.map((one, i) => (i % 5 === 0 ? 1 : one)),
      patient: ratings.map((_, i) => i),
      classes: 3,
      seed: 1,
      repeats: 199,
    },
  ),
  method(
    "firth-logistic",
    "Logistic regression with Firth’s penalty, one row a patient",
    z.strictObject({ design, event, confidence }),
    firthLogistic,
    { design: [[0], [0], [0], [1], [1], [1]], event: [0, 0, 0, 0, 1, 1] },
  ),
  method("lms", "z score and centile against a growth table", z.strictObject({ value: z.number().positive(), at, table: growth }), lms, {
    value: 8.2,
    at: 9.5,
    table: rows,
  }),
  method(
    "lms-inverse",
    "The measurement at a z score of a growth table",
    z.strictObject({ z: z.number(), at, table: growth }),
    lmsInverse,
    {
      z: -2,
      at: 10,
      table: rows,
    },
  ),
];
