import type { PatientIndex } from "../cluster/patients";
import { sandwich } from "./cholesky";
import { eachTerm, type LogNormalFit, type LogSpans } from "./log-normal-fit";
import type { StandardisedDesign } from "./standardised-design";

/** Intercept, coefficients of the covariates in their own units, and log σ, with their covariances by rows. */
export interface LogNormalEstimates {
  readonly parameters: Float64Array;
  readonly robust: Float64Array;
  readonly modelBased: Float64Array;
}

/**
 * From the standardised problem back to days and the covariates' units, with the sandwich variance H⁻¹(Σ u·uᵀ)H⁻¹, u the score of a patient.
 * No factor for few patients, as R's `survreg(cluster)`; such a variance doesn't depend on how the model is parametrised.
 */
export function estimatesOf(fit: LogNormalFit, spans: LogSpans, design: StandardisedDesign, patients: PatientIndex): LogNormalEstimates {
  const size = design.k + 1;
  const back = jacobian(fit.parameters, spans, design);
  const meat = sandwich(fit.inverseInformation, meatOf(fit, spans, design, patients), size);
  return {
    parameters: parametersOf(fit.parameters, spans, design),
    robust: sandwich(back, meat, size),
    modelBased: sandwich(back, fit.inverseInformation, size),
  };
}

function meatOf({ parameters }: LogNormalFit, spans: LogSpans, design: StandardisedDesign, patients: PatientIndex): Float64Array {
  const { x, k } = design;
  const size = k + 1;
  const scores = new Float64Array(patients.count * size);
  eachTerm(spans, design, parameters, (row, term) => {
    const at = (patients.codes[row] as number) * size;
    for (let j = 0; j < k; j++) scores[at + j] = (scores[at + j] as number) + (x[row * k + j] as number) * (term[1] as number);
    scores[at + k] = (scores[at + k] as number) + (term[2] as number);
  });
  const meat = new Float64Array(size * size);
  for (let g = 0; g < patients.count; g++) {
    for (let a = 0; a < size; a++) {
      const left = scores[g * size + a] as number;
      for (let b = 0; b < size; b++) meat[a * size + b] = (meat[a * size + b] as number) + left * (scores[g * size + b] as number);
    }
  }
  return meat;
}

/** β₀ = centre + σ(γ₀ − Σ γⱼcⱼ/sⱼ), βⱼ = σγⱼ/sⱼ, log σ, where σ = spread/θ. */
function parametersOf(fitted: Float64Array, { centre, spread }: LogSpans, { k, centre: c, spread: s }: StandardisedDesign): Float64Array {
  const sigma = spread / (fitted[k] as number);
  const result = new Float64Array(k + 1);
  result[0] = centre + sigma * (fitted[0] as number);
  for (let j = 1; j < k; j++) {
    const slope = (sigma * (fitted[j] as number)) / (s[j - 1] as number);
    result[j] = slope;
    result[0] -= slope * (c[j - 1] as number);
  }
  result[k] = Math.log(sigma);
  return result;
}

/** Derivatives of what `parametersOf` gives with respect to the standardised parameters, by rows. */
function jacobian(fitted: Float64Array, spans: LogSpans, design: StandardisedDesign): Float64Array {
  const { k, centre: c, spread: s } = design;
  const size = k + 1;
  const theta = fitted[k] as number;
  const sigma = spans.spread / theta;
  const now = parametersOf(fitted, spans, design);
  const result = new Float64Array(size * size);
  result[0] = sigma;
  result[k] = -((now[0] as number) - spans.centre) / theta;
  for (let j = 1; j < k; j++) {
    result[j] = (-sigma * (c[j - 1] as number)) / (s[j - 1] as number);
    result[j * size + j] = sigma / (s[j - 1] as number);
    result[j * size + k] = -(now[j] as number) / theta;
  }
  result[k * size + k] = -1 / theta;
  return result;
}
