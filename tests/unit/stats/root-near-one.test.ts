import { expect, test } from "vitest";
import { seededRandom } from "@/lib/stats";
import { rootNearOne } from "@/lib/stats/linear/root-near-one";
import { symmetricPower } from "@/lib/stats/linear/symmetric-power";

// The series against eigenvalues, up to the largest trace that it takes: both ways to (I − G)^(−1/2) agree to the last digits.
const { uniform } = seededRandom(7);

/** B Bᵀ with this trace. */
function gramOf(p: number, trace: number): number[] {
  const b = Array.from({ length: p }, () => Array.from({ length: 2 }, () => uniform() - 0.5));
  const gram = b.flatMap((left) => b.map((right) => left.reduce((sum, value, k) => sum + value * (right[k] ?? 0), 0)));
  const own = gram.reduce((sum, value, place) => (place % (p + 1) === 0 ? sum + value : sum), 0);
  return gram.map((value) => (value * trace) / own);
}

test.each([1, 2, 3, 5, 8])("%i columns", (p) => {
  for (const trace of [0.999 * 2 ** -11, 2 ** -13, 1e-6, 1e-12]) {
    const grams = [...gramOf(p, 0.3), ...gramOf(p, trace)];
    const left = Float64Array.from({ length: p * p }, (_, place) => (place % (p + 1) === 0 ? 1 : 0) - (grams[p * p + place] ?? 0));
    const root = rootNearOne(grams, p * p, p);
    expect(root).not.toBeNull();
    symmetricPower(left, p, -0.5, 1).forEach((value, place) => {
      expect(Math.abs((root?.[place] ?? Number.NaN) - value)).toBeLessThan((4 + p) * Number.EPSILON);
    });
  }
});

test("none of a larger G, of a G that isn't a number, or of more columns than it keeps room for", () => {
  expect(rootNearOne([2 ** -11], 0, 1)).toBeNull();
  expect(rootNearOne([Number.NaN], 0, 1)).toBeNull();
  expect(rootNearOne(new Array<number>(81).fill(0), 0, 9)).toBeNull();
});
