import fc from "fast-check";
import { expect, test } from "vitest";
import { press } from "@/lib/charts/place/press";

const heights = fc.array(fc.double({ min: 2, max: 900, noNaN: true }), { minLength: 1, maxLength: 40 });

test("nothing leaves the room, the order stays, and what lies low stays where it is", () => {
  fc.assert(
    fc.property(heights, (all) => {
      const pressed = press(Object.freeze(all), 100, 2);
      for (const [index, height] of pressed.entries()) {
        expect(height).toBeLessThanOrEqual(98 + 1e-9);
        if ((all[index] ?? 0) <= 0.6 * 98) expect(height).toBe(all[index]);
        for (const [other, lower] of pressed.entries())
          if ((all[other] ?? 0) < (all[index] ?? 0) - 1e-6) expect(lower).toBeLessThan(height);
      }
    }),
  );
});

test("what fits is left as it is", () => {
  expect(press([2, 40, 98], 100, 2)).toEqual([2, 40, 98]);
});
