import { addAt, takeNext } from "./add-at";

const digits = 65536;
/** From here on the highest word is one of a number below zero. */
const negative = 32768;

/**
 * Row numbers in rising order of values; equal values keep their order. None may be NaN.
 * The bits of numbers, read as whole numbers, are in the order of the numbers once those below zero are turned over, so four passes over
 * 16 bits each sort a million rows in a tenth of the time of a comparing sort.
 */
export function rowsInOrder(values: ArrayLike<number>): Uint32Array {
  const bits = orderedBits(values);
  let rows = new Uint32Array(values.length).map((_, row) => row);
  let spare = new Uint32Array(values.length);
  for (let place = 0; place < 4; place++) {
    if (sortByDigit(bits, place, rows, spare)) [rows, spare] = [spare, rows];
  }
  return rows;
}

/** Four words of 16 bits a number, the lowest first. */
function orderedBits(values: ArrayLike<number>): Uint16Array {
  // adding zero turns −0 into 0
  const bits = new Uint16Array(Float64Array.from(values).map((value) => value + 0).buffer);
  for (let at = 0; at < bits.length; at += 4) {
    const top = bits[at + 3] as number;
    if (top < negative) bits[at + 3] = top + negative;
    else for (let word = at; word < at + 4; word++) bits[word] = digits - 1 - (bits[word] as number);
  }
  return bits;
}

/** One pass; false when all rows share the digit, and nothing was moved. */
function sortByDigit(bits: Uint16Array, place: number, from: Uint32Array, to: Uint32Array): boolean {
  const next = new Uint32Array(digits + 1);
  for (let row = 0; row < from.length; row++) addAt(next, (bits[4 * row + place] as number) + 1, 1);
  if (from.length === 0 || next[(bits[place] as number) + 1] === from.length) return false;
  for (let digit = 0; digit < digits; digit++) addAt(next, digit + 1, next[digit] as number);
  for (let i = 0; i < from.length; i++) {
    const row = from[i] as number;
    to[takeNext(next, bits[4 * row + place] as number)] = row;
  }
  return true;
}

/** Row numbers gathered by the step that each row belongs to: those of step s are `rows[first[s]]` … `rows[first[s + 1] − 1]`. */
export interface RowsByStep {
  readonly first: Uint32Array;
  readonly rows: Uint32Array;
}

export function rowsByStep(stepOfRow: ArrayLike<number>, steps: number): RowsByStep {
  const first = new Uint32Array(steps + 1);
  for (let row = 0; row < stepOfRow.length; row++) addAt(first, (stepOfRow[row] as number) + 1, 1);
  for (let step = 0; step < steps; step++) addAt(first, step + 1, first[step] as number);
  const next = first.slice();
  const rows = new Uint32Array(stepOfRow.length);
  for (let row = 0; row < stepOfRow.length; row++) rows[takeNext(next, stepOfRow[row] as number)] = row;
  return { first, rows };
}
