import { type ContrastEstimate, contrastEstimate, withheld } from "./linear/contrast-estimate";
import type { Link } from "./linear/links";
import { contrastOf, type Regression, type RegressionInput, regression } from "./linear/regression";
import type { Note } from "./notes";
import { requireConfidence } from "./require";
import { thresholds } from "./thresholds";

/** A coefficient; on the log and logit scale also its exponential, a ratio. */
export interface Coefficient extends ContrastEstimate {
  readonly name: string;
  readonly ratio?: { readonly estimate: number; readonly lower: number | null; readonly upper: number | null };
}

export interface RegressionRecord {
  readonly coefficients: readonly Coefficient[];
  readonly n: number;
  readonly patients: number;
  readonly method: string;
  readonly convention: string;
  readonly notes: readonly Note[];
}

const working: Readonly<Record<Link, string>> = {
  identity: "equal working variances (weights taken as inverse variances)",
  log: "working variance as the mean (Poisson; modified Poisson for 0 and 1)",
  logit: "working variance of the binomial",
};

/**
 * Regression with errors that know which rows share a patient: least squares (weighted) or a GLM with log or logit link,
 * CR2 variance and Satterthwaite df a coefficient. The adjustment uses the working model of the fit itself.
 * Pustejovsky JE, Tipton E. J Bus Econ Stat 2018;36:672-683. With one row a patient and no weights the errors are HC2.
 * @param input design: rows without the intercept; names: one a column of design
 * @throws RangeError when lengths differ, columns are combinations of one another, or the outcome is separated; TypeError when a number isn't finite
 * @example cr2Regression({ values: [1, 2, 4, 5], design: [[0], [1], [2], [3]], patient: [1, 2, 3, 4] }).coefficients[1].estimate.toFixed(3) // => "1.400"
 */
export function cr2Regression(
  input: RegressionInput & { readonly names?: readonly string[]; readonly confidence?: number },
): RegressionRecord {
  const { link = "identity", intercept = true, confidence = 0.95 } = input;
  requireConfidence("cr2Regression", confidence);
  const model = regression("cr2Regression", input);
  const names = coefficientNames(input.names, model.coefficients.length, intercept);
  const few = model.index.count < thresholds.patientsForInterval;
  return {
    coefficients: names.map((name, place) => ({ name, ...coefficient(model, place, link, confidence) })),
    n: input.values.length,
    patients: model.index.count,
    method: `regression (${link} link), CR2 cluster-robust variance, Satterthwaite df`,
    convention: working[link],
    notes: few ? [tooFew(model)] : [],
  };
}

function coefficient(model: Regression, place: number, link: Link, confidence: number): Omit<Coefficient, "name"> {
  const estimate = (model.coefficients[place] as number) * model.scale;
  const result =
    model.index.count < thresholds.patientsForInterval
      ? withheld(estimate, tooFew(model))
      : contrastEstimate(model.fit, contrastOf(model, unit(place, model.coefficients.length)), estimate, model.scale, confidence);
  return link === "identity" ? result : { ...result, ratio: exponentiated(result) };
}

function exponentiated({ estimate, lower, upper }: ContrastEstimate) {
  return { estimate: Math.exp(estimate), lower: lower === null ? null : Math.exp(lower), upper: upper === null ? null : Math.exp(upper) };
}

function tooFew({ index }: Regression): Note {
  return { code: "too-few-for-interval", patients: index.count, needed: thresholds.patientsForInterval };
}

function unit(place: number, length: number): number[] {
  return Array.from({ length }, (_, j) => (j === place ? 1 : 0));
}

function coefficientNames(names: readonly string[] | undefined, count: number, intercept: boolean): string[] {
  const width = intercept ? count - 1 : count;
  if (names && names.length !== width) throw new RangeError(`cr2Regression requires ${width} names, received ${names.length}`);
  const given = names ?? Array.from({ length: width }, (_, j) => `x${j + 1}`);
  return intercept ? ["intercept", ...given] : [...given];
}
