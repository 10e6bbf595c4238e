import { digitAt } from "./weighted";

// the permutation of Verhoeff (1969), of which each place applies the next power
const permutation = [1, 5, 7, 6, 2, 8, 3, 0, 9, 4] as const;

/** Product in the dihedral group of the pentagon: 0–4 turn, 5–9 flip. */
function turn(a: number, b: number): number {
  if (a < 5) return b < 5 ? (a + b) % 5 : 5 + ((a + b) % 5);
  return b < 5 ? 5 + ((a - b) % 5) : (a - b + 5) % 5;
}

/** Verhoeff's check over the dihedral group D5: finds every single wrong digit and every swap of neighbours. */
export function hasVerhoeffCheck(digits: string): boolean {
  let check = 0;
  for (let place = 0; place < digits.length; place++) {
    let value = digitAt(digits, digits.length - 1 - place);
    for (let power = 0; power < place % 8; power++) value = permutation[value] ?? 0;
    check = turn(check, value);
  }
  return digits.length > 1 && check === 0;
}
