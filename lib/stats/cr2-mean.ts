import { requireRows } from "./cluster/check-rows";
import { indexPatients, sumByPatient } from "./cluster/patients";
import type { Note } from "./notes";
import type { Estimate, PatientLabels } from "./record";
import { requireConfidence } from "./require";
import { centred } from "./summary/centred";
import { noInterval, tInterval } from "./summary/t-interval";
import { wholeDf } from "./summary/whole-df";
import { thresholds } from "./thresholds";

const method = "mean with CR2 cluster-robust variance, Satterthwaite df";

/**
 * The mean of all values (bone-weighted) with an interval that knows which values share a patient.
 * CR2 of Bell and McCaffrey with an identity working model. For a mean it has a closed form in the sums of residuals S of the patients:
 * variance = Σ S²/(1 − m/n) / n² with m the values of a patient; df = 1 / (n² ΣΣ P²), P the products of the patients' quadratic forms.
 * No n × n matrix is formed. With one value a patient this is SD/√n on n − 1 df, by the same formula.
 * Bell RM, McCaffrey DF. Surv Methodol 2002;28:169-181; Pustejovsky JE, Tipton E. J Bus Econ Stat 2018;36:672-683.
 * @throws RangeError without values, with unequal lengths or a confidence outside 0 to 1; TypeError when a value is not finite
 * @example cr2Mean({ values: [30, 32, 41, 36], patient: ["a", "a", "b", "c"] }).estimate // => 34.75
 */
export function cr2Mean({
  values,
  patient,
  confidence = 0.95,
}: {
  values: readonly number[];
  patient: PatientLabels;
  confidence?: number;
}): Estimate & { readonly estimate: number } {
  requireRows("cr2Mean", values, patient);
  requireConfidence("cr2Mean", confidence);
  const index = indexPatients(patient);
  const { mean, scale, residuals, constant } = centred(values);
  const common = { estimate: mean, n: values.length, patients: index.count, method };
  if (index.count < thresholds.patientsForInterval) {
    return {
      ...common,
      ...noInterval,
      notes: [{ code: "too-few-for-interval", patients: index.count, needed: thresholds.patientsForInterval }],
    };
  }
  const se = Math.sqrt(varianceOfMean(sumByPatient(index, residuals), index.rows)) * scale;
  const df = satterthwaiteOfMean(index.rows);
  return { ...common, se, df, ...tInterval(mean, se, df, confidence), notes: notesOf(df, constant) };
}

function notesOf(df: number, constant: boolean): Note[] {
  const notes: Note[] = [{ code: "clustered", df }];
  if (df < thresholds.dfForSegmentMean) notes.push({ code: "few-patients", df });
  if (constant) notes.push({ code: "constant-values" });
  return notes;
}

function varianceOfMean(sums: Float64Array, rows: Int32Array): number {
  const n = rows.reduce((total, m) => total + m, 0);
  let sum = 0;
  for (let c = 0; c < sums.length; c++) sum += (sums[c] as number) ** 2 / (1 - (rows[c] as number) / n);
  return sum / (n * n);
}

/** df of the CR2 variance of a mean under independent errors: depends on the patients' numbers of values alone. */
function satterthwaiteOfMean(rows: Int32Array): number {
  const n = rows.reduce((total, m) => total + m, 0);
  let own = 0;
  let cross = 0;
  let crossSquares = 0;
  for (const m of rows) {
    const share = m / n;
    const product = (share * share) / (1 - share);
    own += share * share;
    cross += product;
    crossSquares += product * product;
  }
  return wholeDf(1 / (own + cross * cross - crossSquares));
}
