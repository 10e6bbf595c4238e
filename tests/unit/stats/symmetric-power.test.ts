import { expect, test } from "vitest";
import { seededRandom } from "@/lib/stats";
import { symmetricPower } from "@/lib/stats/linear/symmetric-power";

// By definition: √M · √M = M, and M^(−1/2) M M^(−1/2) is the identity, or the projection on what M spans. Sizes on both sides of the one at which the way changes.
const { uniform } = seededRandom(5);

/** B Bᵀ of a p × rank matrix of chance: symmetric, of that rank. */
function ofRank(p: number, rank: number, factor = 1): Float64Array {
  const b = Float64Array.from({ length: p * rank }, () => uniform() - 0.5);
  return Float64Array.from({ length: p * p }, (_, place) => {
    const [i, j] = [Math.floor(place / p), place % p];
    let sum = 0;
    for (let k = 0; k < rank; k++) sum += (b[i * rank + k] as number) * (b[j * rank + k] as number);
    return factor * sum;
  });
}

function product(left: Float64Array, right: Float64Array, p: number): Float64Array {
  return Float64Array.from({ length: p * p }, (_, place) => {
    const [i, j] = [Math.floor(place / p), place % p];
    let sum = 0;
    for (let k = 0; k < p; k++) sum += (left[i * p + k] as number) * (right[k * p + j] as number);
    return sum;
  });
}

const largest = (numbers: Float64Array) => numbers.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
const apart = (a: Float64Array, b: Float64Array) => largest(a.map((value, i) => value - (b[i] as number)));

test.each([2, 3, 5, 8, 9, 12])("the roots of a %i × %i matrix", (p) => {
  for (const factor of [1, 1e-8, 1e8]) {
    const matrix = ofRank(p, p + 3, factor);
    const root = symmetricPower(matrix, p, 0.5, largest(matrix));
    expect(apart(product(root, root, p), matrix)).toBeLessThan(1e-13 * p * largest(matrix));
  }
});

test.each([
  [3, 2],
  [8, 5],
  [9, 4],
])("%i × %i of less than full rank: a projection of that rank", (p, rank) => {
  const matrix = ofRank(p, rank);
  const back = symmetricPower(matrix, p, -0.5, largest(matrix));
  const projection = product(product(back, matrix, p), back, p);
  const trace = Array.from({ length: p }, (_, i) => projection[i * (p + 1)] as number).reduce((sum, value) => sum + value, 0);
  expect(trace).toBeCloseTo(rank, 8);
  expect(apart(product(projection, projection, p), projection)).toBeLessThan(1e-8);
});

test("a diagonal is raised entry by entry; what is nothing stays nothing", () => {
  expect([...symmetricPower(Float64Array.of(4, 0, 0, 0), 2, -0.5, 4)]).toEqual([0.5, 0, 0, 0]);
});
