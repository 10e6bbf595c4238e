import type { Note } from "../notes";
import { thresholds } from "../thresholds";

/** A characteristic chosen beforehand to adjust for: numbers, or codes that become a column for each code but the first. */
export interface Covariate {
  readonly field: string;
  readonly values: readonly (number | string | null)[];
  /** Known only after the clock's start: it may be an effect of what is compared, so nothing is adjusted for it. */
  readonly knownLater?: boolean;
  /** What the model holds in any case, as days at equal gain hold the gain: twice in, neither could be read. */
  readonly inModel?: boolean;
}

export interface CovariateColumns {
  readonly names: readonly string[];
  /** One list of numbers a row of `rows`. */
  readonly design: readonly (readonly number[])[];
  /** Rows whose covariates are all recorded. */
  readonly rows: readonly number[];
  readonly leftOut: number;
}

export function covariateColumns(covariates: readonly Covariate[], n: number): CovariateColumns {
  const rows = Array.from({ length: n }, (_, row) => row).filter((row) => covariates.every(({ values }) => values[row] !== null));
  const columns = covariates.flatMap((covariate) => columnsOf(covariate, rows));
  return {
    names: columns.map(({ name }) => name),
    design: rows.map((_, i) => columns.map(({ values }) => values[i] as number)),
    rows,
    leftOut: n - rows.length,
  };
}

function columnsOf({ field, values }: Covariate, rows: readonly number[]) {
  const own = rows.map((row) => values[row] as number | string);
  if (own.every((value) => typeof value === "number")) return [{ name: field, values: own as number[] }];
  const codes = [...new Set(own.map(String))].sort();
  return codes.slice(1).map((code) => ({ name: `${field}: ${code}`, values: own.map((value) => (String(value) === code ? 1 : 0)) }));
}

/** @throws RangeError when a covariate hasn't a value, or null, for each row */
export function requireCovariates(covariates: readonly Covariate[], n: number): void {
  for (const { field, values } of covariates) {
    if (values.length !== n) throw new RangeError(`estimate requires ${field} for each row (${n}), received ${values.length}`);
  }
}

/**
 * Why no adjusted estimate is given, empty when one may be: a covariate known too late or in the model already, or more columns than the
 * patients carry.
 * @param patients those who bear the information: all, or those with the rarer outcome of a share
 */
export function refusals(covariates: readonly Covariate[], columns: number, patients: number): readonly Note[] {
  const why = covariates.flatMap(({ field, knownLater, inModel }): Note[] => {
    if (knownLater) return [{ code: "known-later", field }];
    return inModel ? [{ code: "in-model", field }] : [];
  });
  const allowed = Math.floor(patients / thresholds.patientsPerParameter);
  return columns > allowed ? [...why, { code: "too-many-covariates", columns, patients, allowed }] : why;
}

export function leftOutNote(n: number): readonly Note[] {
  return n > 0 ? [{ code: "left-out", n }] : [];
}
