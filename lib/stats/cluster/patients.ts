import type { PatientLabels } from "../record";

/** Which patient each row belongs to, patients numbered from 0 in the order of their first row. */
export interface PatientIndex {
  readonly codes: Int32Array;
  readonly count: number;
  readonly rows: Int32Array;
}

/** Numbers the patients and counts their rows. Equal labels are one patient; 1 and "1" are two. */
export function indexPatients(patient: PatientLabels): PatientIndex {
  const codes = new Int32Array(patient.length);
  const count = areSmallCounts(patient) ? numberByTable(patient, codes) : numberByMap(patient, codes);
  const rows = new Int32Array(count);
  for (let i = 0; i < codes.length; i++) rows[codes[i] as number] = (rows[codes[i] as number] as number) + 1;
  return { codes, count, rows };
}

/** How many patients there are. */
export function countPatients(patient: PatientLabels): number {
  return indexPatients(patient).count;
}

function numberByMap(patient: PatientLabels, codes: Int32Array): number {
  const numbers = new Map<string | number, number>();
  for (let i = 0; i < patient.length; i++) {
    const label = patient[i] as string | number;
    let number = numbers.get(label);
    if (number === undefined) {
      number = numbers.size;
      numbers.set(label, number);
    }
    codes[i] = number;
  }
  return numbers.size;
}

/** Whether all labels are whole numbers not far above the number of rows, as a registry numbers its persons. */
function areSmallCounts(patient: PatientLabels): patient is readonly number[] {
  const most = 4 * patient.length + 1000;
  for (let i = 0; i < patient.length; i++) {
    const label = patient[i];
    if (typeof label !== "number" || !(label >= 0 && label < most && Number.isInteger(label))) return false;
  }
  return true;
}

/** A table of the labels is gone through many times faster than a map. */
function numberByTable(patient: readonly number[], codes: Int32Array): number {
  const numbers = new Int32Array(4 * patient.length + 1000).fill(-1);
  let count = 0;
  for (let i = 0; i < patient.length; i++) {
    const label = patient[i] as number;
    if (numbers[label] === -1) numbers[label] = count++;
    codes[i] = numbers[label] as number;
  }
  return count;
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
