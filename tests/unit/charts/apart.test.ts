import fc from "fast-check";
import { expect, test } from "vitest";
import { apart } from "@/lib/charts/place/apart";

const heights = fc.array(fc.double({ min: 0, max: 200, noNaN: true }), { maxLength: 12 });

test("no two stand nearer than the gap, and their order stays", () => {
  fc.assert(
    fc.property(heights, (ys) => {
      const placed = apart(Object.freeze(ys), 15);
      const order = ys.map((_, index) => index).sort((a, b) => (ys[a] ?? 0) - (ys[b] ?? 0) || a - b);
      for (const [place, index] of order.entries())
        if (place > 0) expect((placed[index] ?? 0) - (placed[order[place - 1] ?? 0] ?? 0)).toBeGreaterThan(15 - 1e-6);
    }),
  );
});

test("those that stand apart already stay, and a heap stays about its middle", () => {
  expect(apart([0, 40, 20], 15)).toEqual([0, 40, 20]);
  const [a = 0, b = 0, c = 0] = apart([50, 50, 50], 10);
  expect([a, b, c]).toEqual([40, 50, 60]);
});
