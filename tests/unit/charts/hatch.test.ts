import fc from "fast-check";
import { expect, test } from "vitest";
import { hatch } from "@/lib/charts/place/hatch";

test("slanted lines stay in their rectangle and rise at 45°", () => {
  const side = fc.double({ min: 1, max: 200, noNaN: true });
  fc.assert(
    fc.property(side, side, (width, height) => {
      const numbers = [...hatch({ x: 10, y: 20, width, height }, 5).matchAll(/M(\S+) (\S+)L(\S+) ([^M]+)/g)].map((found) =>
        found.slice(1).map(Number),
      );
      for (const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] of numbers) {
        for (const x of [x1, x2]) expect(x >= 10 - 1e-9 && x <= 10 + width + 1e-9).toBe(true);
        for (const y of [y1, y2]) expect(y >= 20 - 1e-9 && y <= 20 + height + 1e-9).toBe(true);
        expect(x2 - x1).toBeCloseTo(y1 - y2, 6);
      }
    }),
  );
});
