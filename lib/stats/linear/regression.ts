import { indexPatients, type PatientIndex } from "../cluster/patients";
import type { PatientLabels } from "../record";
import { requireFinite, requirePositive, requireSameLength, requireSome } from "../require";
import { powerOfTwoScale } from "../summary/scale";
import { type ClusteredFit, clusteredFit } from "./clustered-fit";
import { fitGlm } from "./glm";
import { columnsOf, forwardSubstituted } from "./least-squares";
import { type Link, links } from "./links";

export interface RegressionInput {
  readonly values: readonly number[];
  /** One row of covariates a value, without the intercept. */
  readonly design: readonly (readonly number[])[];
  readonly patient: PatientLabels;
  /** Inverse variances up to a factor. */
  readonly weights?: readonly number[] | undefined;
  /** What a count was seen over; its logarithm is the offset. Log link only. */
  readonly exposure?: readonly number[] | undefined;
  readonly link?: Link | undefined;
  readonly intercept?: boolean | undefined;
}

export interface Regression {
  readonly coefficients: Float64Array;
  readonly fit: ClusteredFit;
  /** The triangle of the design, p × p by rows. */
  readonly r: Float64Array;
  readonly index: PatientIndex;
  /** Coefficients and their errors are those of values divided by this. */
  readonly scale: number;
}

/** The fit that every CR2 method of regression starts from. */
export function regression(caller: string, input: RegressionInput): Regression {
  const { values, patient, link = "identity", intercept = true } = input;
  requireRegression(caller, input, link);
  const scale = link === "identity" ? powerOfTwoScale(values) : 1;
  const glm = fitGlm(caller, {
    design: columnsOf(input.design, { intercept }),
    y: Float64Array.from(values).map((value) => value / scale),
    link,
    weights: input.weights ?? new Float64Array(values.length).fill(1),
    offset: input.exposure ? input.exposure.map(Math.log) : new Float64Array(values.length),
  });
  const index = indexPatients(patient);
  return {
    coefficients: glm.coefficients,
    fit: clusteredFit(glm.factors.q, glm.residuals, glm.variance, index),
    r: glm.factors.r,
    index,
    scale,
  };
}

/** A contrast of coefficients in the coordinates of Q. */
export function contrastOf({ r }: Regression, weights: ArrayLike<number>): Float64Array {
  return forwardSubstituted(r, weights);
}

function requireRegression(caller: string, { values, design, patient, weights, exposure }: RegressionInput, link: Link): void {
  requireSome(caller, "value", values.length);
  requireSameLength(caller, "values", values.length, "design", design.length);
  requireSameLength(caller, "values", values.length, "patient", patient.length);
  requireFinite(caller, "values", values);
  if (!(link in links)) throw new RangeError(`${caller} requires the link identity, log or logit, received another`);
  const wrong = values.findIndex((value) => !links[link].allows(value));
  if (wrong >= 0)
    throw new RangeError(`${caller} requires ${links[link].allowed} for the link ${link}, received ${values[wrong]} at ${wrong}`);
  requireDesign(caller, design);
  requireAllPositive(caller, "weights", weights, values.length);
  requireAllPositive(caller, "exposure", exposure, values.length);
  if (exposure && link !== "log") throw new RangeError(`${caller} requires the link log with exposure, received ${link}`);
}

function requireDesign(caller: string, design: readonly (readonly number[])[]): void {
  const width = design[0]?.length ?? 0;
  design.forEach((row, i) => {
    if (row.length !== width)
      throw new RangeError(`${caller} requires ${width} numbers in each row of design, received ${row.length} at ${i}`);
    // a name a row is made only for a message
    if (!row.every(Number.isFinite)) requireFinite(caller, `row ${i} of design`, row);
  });
}

function requireAllPositive(caller: string, name: string, numbers: readonly number[] | undefined, length: number): void {
  if (!numbers) return;
  requireSameLength(caller, "values", length, name, numbers.length);
  numbers.forEach((value, i) => {
    requirePositive(caller, `${name} at ${i}`, value);
  });
}
