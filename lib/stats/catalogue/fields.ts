import * as z from "zod";

// The names of inputs are the same in every method; here is what each may hold.

export const numbers = z.array(z.number()).describe("numbers, one a row");
export const counts = z.array(z.number().int().nonnegative()).describe("whole numbers from 0");
export const values = numbers;
const label = z.union([z.string(), z.number()]);
export const patient = z.array(label).describe("which patient each row belongs to: equal labels are one patient");
export const group = z.array(label).describe("which group each row belongs to");
export const between = z.tuple([label, label]).describe("the two groups, first minus second").exactOptional();
export const event = z.array(z.number().int().nonnegative()).describe("0 or 1 a row: happened or not");
export const times = z.array(z.number().nonnegative()).describe("times, one a row, all in one unit");
export const entry = z.array(z.number().nonnegative()).describe("under observation from after this time").exactOptional();
export const patientOrNone = patient.exactOptional();
export const confidence = z.number().gt(0).lt(1).default(0.95).describe("confidence of the interval");
export const design = z.array(numbers).describe("one row of covariates a row, without the intercept");
export const seed = z.number().int().describe("whole number that fixes the draws: the same seed, the same answer");
export const table = z.array(counts).describe("counts, row by row");
export const limits = z.enum(["log-log", "log", "plain"]).default("log-log").describe("scale on which the limits are symmetric");
