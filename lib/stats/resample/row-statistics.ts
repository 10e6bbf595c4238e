import { indexPatients, type PatientIndex, sumByPatient } from "../cluster/patients";
import type { PatientLabels } from "../record";
import { centred } from "../summary/centred";

/** A statistic of the rows when each patient's rows are taken `timesDrawn` times. */
export type RowStatistic = (timesDrawn: Int32Array) => number;

/** The mean, from the patients' sums: one step a patient. */
export function meanOfDraws(values: readonly number[], patient: PatientLabels): RowStatistic {
  const index = indexPatients(patient);
  const { mean, scale, residuals } = centred(values);
  const sums = sumByPatient(index, residuals);
  return (timesDrawn) => {
    let sum = 0;
    let rows = 0;
    for (let c = 0; c < timesDrawn.length; c++) {
      const times = timesDrawn[c] as number;
      sum += times * (sums[c] as number);
      rows += times * (index.rows[c] as number);
    }
    return mean + (sum / rows) * scale;
  };
}

/** A quantile of type 7, from the rows sorted once: one step a row. */
export function quantileOfDraws(values: readonly number[], patient: PatientLabels, p: number): RowStatistic {
  const index = indexPatients(patient);
  const order = Int32Array.from(values.keys()).sort((a, b) => (values[a] as number) - (values[b] as number));
  const sorted = Float64Array.from(order, (row) => values[row] as number);
  const owners = Int32Array.from(order, (row) => index.codes[row] as number);
  return (timesDrawn) => {
    const place = p * (drawnRows(index, timesDrawn) - 1); // counted from 0
    const below = Math.floor(place);
    const [low, high] = neighbours(sorted, owners, timesDrawn, below);
    return low + (place - below) * (high - low);
  };
}

function drawnRows({ rows }: PatientIndex, timesDrawn: Int32Array): number {
  let sum = 0;
  for (let c = 0; c < rows.length; c++) sum += (timesDrawn[c] as number) * (rows[c] as number);
  return sum;
}

/** The values at `place` and the next place of the drawn rows in rising order (the last one twice). */
function neighbours(sorted: Float64Array, owners: Int32Array, timesDrawn: Int32Array, place: number): [number, number] {
  let passed = 0;
  let i = 0;
  while (passed <= place) passed += timesDrawn[owners[i++] as number] as number;
  const low = sorted[i - 1] as number;
  if (passed > place + 1) return [low, low];
  while (i < sorted.length && timesDrawn[owners[i] as number] === 0) i++;
  return [low, i < sorted.length ? (sorted[i] as number) : low];
}
