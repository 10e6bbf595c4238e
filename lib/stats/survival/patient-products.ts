import { addAt } from "./add-at";

/**
 * For each patient a few running numbers, and over all patients the sums of their products.
 * A change of one patient costs the same however many patients there are, so a variance at every step of a curve
 * costs one pass over the rows.
 */
export interface PatientProducts {
  /** Adds `change` (one number a kind) to the patient's numbers. */
  readonly add: (patient: number, change: readonly number[]) => void;
  /** Σ over patients of (weights · numbers)². */
  readonly sumOfSquares: (weights: readonly number[]) => number;
}

export function patientProducts(patients: number, kinds: number): PatientProducts {
  const held = new Float64Array(patients * kinds);
  const products = new Float64Array(kinds * kinds);
  const add = (patient: number, change: readonly number[]) => {
    const at = patient * kinds;
    for (let a = 0; a < kinds; a++) {
      const [changeA, heldA] = [change[a] as number, held[at + a] as number];
      for (let b = 0; b <= a; b++) {
        const changeB = change[b] as number;
        addAt(products, a * kinds + b, heldA * changeB + changeA * ((held[at + b] as number) + changeB));
      }
    }
    for (let a = 0; a < kinds; a++) addAt(held, at + a, change[a] as number);
  };
  const sumOfSquares = (weights: readonly number[]) => {
    let sum = 0;
    for (let a = 0; a < kinds; a++) {
      for (let b = 0; b <= a; b++) {
        const product = (weights[a] as number) * (weights[b] as number) * (products[a * kinds + b] as number);
        sum += a === b ? product : 2 * product;
      }
    }
    return Math.max(sum, 0); // rounding may leave −1e-20 where the sum is zero
  };
  return { add, sumOfSquares };
}
