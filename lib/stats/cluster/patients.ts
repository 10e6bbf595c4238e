import type { PatientLabels } from "../record";

/** Which patient each row belongs to, patients numbered from 0 in the order of their first row. */
export interface PatientIndex {
  readonly codes: Int32Array;
  readonly count: number;
  readonly rows: Int32Array;
}

/** Numbers the patients and counts their rows. Equal labels are one patient; 1 and "1" are two. */
export function indexPatients(patient: PatientLabels): PatientIndex {
  const numbers = new Map<string | number, number>();
  const codes = new Int32Array(patient.length);
  for (let i = 0; i < patient.length; i++) {
    const label = patient[i] as string | number;
    let number = numbers.get(label);
    if (number === undefined) {
      number = numbers.size;
      numbers.set(label, number);
    }
    codes[i] = number;
  }
  const rows = new Int32Array(numbers.size);
  for (const code of codes) rows[code] = (rows[code] as number) + 1;
  return { codes, count: numbers.size, rows };
}

/** Sum of the values of each patient. */
export function sumByPatient({ codes, count }: PatientIndex, values: ArrayLike<number>): Float64Array {
  const sums = new Float64Array(count);
  for (let i = 0; i < codes.length; i++) {
    const code = codes[i] as number;
    sums[code] = (sums[code] as number) + (values[i] as number);
  }
  return sums;
}

/** Row numbers of each patient, in the order of the rows. */
export function rowsOfPatients({ codes, count, rows }: PatientIndex): readonly Int32Array[] {
  const lists = Array.from({ length: count }, (_, code) => new Int32Array(rows[code] as number));
  const filled = new Int32Array(count);
  for (let i = 0; i < codes.length; i++) {
    const code = codes[i] as number;
    (lists[code] as Int32Array)[filled[code] as number] = i;
    filled[code] = (filled[code] as number) + 1;
  }
  return lists;
}
