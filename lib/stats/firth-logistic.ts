import { chiSquareQuantile, chiSquareUpper } from "./distributions";
import { columnsOf, factored, forwardSubstituted } from "./linear/least-squares";
import { climb, type LogisticData, type Place } from "./logistic/penalised";
import { profileLimit } from "./logistic/profile-limit";
import { requireConfidence, requireFinite, requireSameLength, requireSome } from "./require";

/** One coefficient on the log-odds scale; its p from the penalised likelihood ratio. */
export interface FirthCoefficient {
  readonly estimate: number;
  readonly se: number;
  readonly lower: number;
  readonly upper: number;
  readonly statistic: number;
  readonly p: number;
}

/**
 * Logistic regression with Firth's penalty: finite also where a column separates the outcome. Limits from the profile of the penalised likelihood.
 * It takes rows as independent: one row a patient.
 * Firth D. Biometrika 1993;80:27-38; Heinze G, Schemper M. Stat Med 2002;21:2409-2419.
 * @param design rows without intercept, which is put first
 * @param event 0 or 1 a row
 * @throws RangeError without rows, with unequal lengths, an event other than 0 or 1, or columns that are combinations of one another; TypeError when a number isn't finite
 * @example firthLogistic({ design: [[0], [0], [1], [1]], event: [0, 0, 1, 1] }).coefficients[1]?.estimate.toFixed(3) // => "3.219"
 */
export function firthLogistic({
  design,
  event,
  confidence = 0.95,
}: {
  design: readonly (readonly number[])[];
  event: readonly number[];
  confidence?: number;
}) {
  requireConfidence("firthLogistic", confidence);
  const data = readData(design, event);
  const columns = data.design.length;
  factored("firthLogistic", data.design); // refuses columns that are combinations of one another
  const top = climb(data, new Float64Array(columns));
  const ses = standardErrors(top);
  const coefficients = Array.from({ length: columns }, (_, j) =>
    inUnitsOf(data.scales[j] as number, coefficientOf(data, top, j, ses[j] as number, confidence)),
  );
  return {
    coefficients: coefficients as readonly FirthCoefficient[],
    n: event.length,
    patients: event.length,
    method: "logistic regression with Firth’s penalty, profile penalised likelihood intervals",
    notes: [],
  } as const;
}

function coefficientOf(data: LogisticData, top: Place, column: number, se: number, confidence: number): FirthCoefficient {
  const drop = chiSquareQuantile(confidence, 1) / 2;
  const without = Float64Array.from(top.at);
  without[column] = 0;
  const statistic = Math.max(0, 2 * (top.logLikelihood - climb(data, without, column).logLikelihood));
  return {
    estimate: top.at[column] as number,
    se,
    lower: profileLimit(data, top, column, se, -1, drop),
    upper: profileLimit(data, top, column, se, 1, drop),
    statistic,
    p: chiSquareUpper(statistic, 1),
  };
}

/** Columns are fitted at largest size 1; a coefficient goes back to the units of its column. */
function inUnitsOf(scale: number, { estimate, se, lower, upper, statistic, p }: FirthCoefficient): FirthCoefficient {
  return { estimate: estimate / scale, se: se / scale, lower: lower / scale, upper: upper / scale, statistic, p };
}

/** √ of the diagonal of the inverse information, at the estimate. */
function standardErrors({ weighted, at }: Place): number[] {
  const { r } = factored("firthLogistic", weighted);
  return Array.from(at.keys(), (j) =>
    Math.hypot(
      ...forwardSubstituted(
        r,
        Float64Array.from(at.keys(), (k) => (k === j ? 1 : 0)),
      ),
    ),
  );
}

function readData(design: readonly (readonly number[])[], event: readonly number[]): LogisticData & { readonly scales: Float64Array } {
  requireSome("firthLogistic", "row", event.length);
  requireSameLength("firthLogistic", "event", event.length, "design", design.length);
  const columns = (design[0] as readonly number[]).length;
  design.forEach((row, i) => {
    requireSameLength("firthLogistic", "the first row of design", columns, `row ${i}`, row.length);
    requireFinite("firthLogistic", "design", row);
  });
  const strange = event.findIndex((value) => value !== 0 && value !== 1);
  if (strange >= 0) throw new RangeError(`firthLogistic requires event to be 0 or 1, received ${String(event[strange])} in row ${strange}`);
  const own = columnsOf(design, { intercept: true });
  const scales = Float64Array.from(own, (column) => column.reduce((most, value) => Math.max(most, Math.abs(value)), 0) || 1);
  return { design: own.map((column, j) => column.map((value) => value / (scales[j] as number))), event, scales };
}
