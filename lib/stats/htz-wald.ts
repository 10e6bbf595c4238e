import { fUpper } from "./distributions/f";
import { contrastOf, type Regression, type RegressionInput, regression } from "./linear/regression";
import { type WaldParts, waldParts } from "./linear/wald";
import type { TestResult } from "./record";
import { requireCount } from "./require";
import { thresholds } from "./thresholds";

/**
 * Test that several coefficients are zero together: Hotelling's T² approximation with the df of Pustejovsky and Tipton (HTZ).
 * F = (η − q + 1)/(η q) · Q on q and η − q + 1 df. With one coefficient it is the square of the CR2 t.
 * Pustejovsky JE, Tipton E. J Bus Econ Stat 2018;36:672-683, section 3.2; Tipton E, Pustejovsky JE. J Educ Behav Stat 2015;40:604-634.
 * @param input as for cr2Regression, with columns: which columns of design (from 0) are tested
 * @throws RangeError as cr2Regression, or when a column isn't one of the design
 * @example htzWald({ values: [1, 3, 2, 5, 4, 6], design: [[0], [1], [0], [1], [0], [1]], patient: [1, 2, 3, 4, 5, 6], columns: [0] }).df // => 1
 */
export function htzWald(
  input: RegressionInput & { readonly columns: readonly number[] },
): TestResult & { readonly dfDenominator: number | null } {
  const model = regression("htzWald", input);
  const enough = model.index.count >= thresholds.patientsForInterval;
  const contrasts = contrastsOf(model, input);
  const parts = enough ? waldParts(model.fit, contrasts) : { q: contrasts.length, quadratic: null, eta: null };
  return {
    ...testOf(parts),
    n: input.values.length,
    patients: model.index.count,
    method: "Wald test with CR2 cluster-robust variance, approximate Hotelling T² (HTZ)",
  };
}

function contrastsOf(model: Regression, { columns, intercept = true }: { columns: readonly number[]; intercept?: boolean | undefined }) {
  const p = model.coefficients.length;
  const width = intercept ? p - 1 : p;
  if (columns.length === 0) throw new RangeError("htzWald requires at least one column, received 0");
  return columns.map((column) => {
    requireCount("htzWald", "a column", column);
    if (column >= width) throw new RangeError(`htzWald requires columns below ${width}, received ${column}`);
    const place = intercept ? column + 1 : column;
    const a = contrastOf(
      model,
      Array.from({ length: p }, (_, j) => (j === place ? 1 : 0)),
    );
    return { a, estimate: model.coefficients[place] as number };
  });
}

/** F and its p from the quadratic form; null with a note when the patients can't carry so many coefficients. */
export function testOf({ q, quadratic, eta }: WaldParts) {
  const df2 = eta === null ? null : eta - q + 1;
  if (quadratic === null || eta === null || df2 === null || df2 <= 0) {
    const because = "too few patients for so many coefficients";
    return { statistic: null, df: q, dfDenominator: null, p: null, notes: [{ code: "not-estimable", because } as const] };
  }
  const statistic = (df2 / (eta * q)) * quadratic;
  return { statistic, df: q, dfDenominator: df2, p: fUpper(statistic, q, df2), notes: [] };
}
