import fc from "fast-check";
import { expect, test } from "vitest";
import { pile } from "@/lib/charts/place/pile";

const xs = fc.array(fc.double({ min: 0, max: 60, noNaN: true }), { maxLength: 80 });
const radius = fc.constantFrom(1, 2.5, 4.5);

test("no two discs overlap, and none sinks below the line", () => {
  fc.assert(
    fc.property(xs, radius, (row, r) => {
      const heights = pile(Object.freeze(row), r);
      expect(heights.every((height) => height >= r)).toBe(true);
      for (let i = 0; i < row.length; i++)
        for (let j = 0; j < i; j++) {
          const apart = Math.hypot((row[i] ?? 0) - (row[j] ?? 0), (heights[i] ?? 0) - (heights[j] ?? 0));
          expect(apart).toBeGreaterThan(2 * r - 1e-3);
        }
    }),
  );
});

test("the same marks are piled the same way at every call", () => {
  fc.assert(
    fc.property(xs, (row) => {
      expect(pile([...row], 2)).toEqual(pile(row, 2));
    }),
  );
});

test("discs that don't touch all lie on the line", () => {
  expect(pile([50, 0, 25], 4)).toEqual([4, 4, 4]);
});

test("equal values stand in one column, a diameter apart", () => {
  expect(pile([7, 7, 7], 2).sort((a, b) => a - b)).toEqual([2, 6, 10]);
});
