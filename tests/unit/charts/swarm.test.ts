import fc from "fast-check";
import { expect, test } from "vitest";
import { type Spot, swarm } from "@/lib/charts/place/swarm";

const spots = fc.array(fc.record({ x: fc.constantFrom(10, 40, 70), y: fc.integer({ min: 0, max: 60 }) }), { maxLength: 60 });

test("marks move along the slope and no further than the reach", () => {
  fc.assert(
    fc.property(spots, fc.constantFrom(0, 0.5, 1), (all, slope) => {
      const moved = swarm(Object.freeze(all), { radius: 2, reach: 12, slope });
      for (const [index, { x, y }] of moved.entries()) {
        const home = all[index] as Spot;
        expect(Math.abs(x - home.x)).toBeLessThanOrEqual(12);
        expect(home.y - y).toBeCloseTo((x - home.x) * slope, 9);
      }
    }),
  );
});

test("with room enough no two marks touch", () => {
  fc.assert(
    fc.property(fc.array(fc.record({ x: fc.constant(50), y: fc.integer({ min: 0, max: 400 }) }), { maxLength: 20 }), (all) => {
      const moved = swarm(all, { radius: 2, reach: 100, slope: 0 });
      for (const [index, a] of moved.entries())
        for (const b of moved.slice(0, index)) expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeGreaterThan(4 - 1e-5);
    }),
  );
});

test("the same marks are moved the same way at every call", () => {
  fc.assert(
    fc.property(spots, (all) => {
      const room = { radius: 2, reach: 9, slope: 1 };
      expect(swarm([...all], room)).toEqual(swarm(all, room));
    }),
  );
});

test("no mark is moved out of the field, and one that stands outside stays where it is", () => {
  const field = { left: 5, right: 60, top: 0, bottom: 40 };
  const isIn = ({ x, y }: Spot) => x >= field.left && x <= field.right && y >= field.top && y <= field.bottom;
  fc.assert(
    fc.property(spots, fc.constantFrom(0, 1), (all, slope) => {
      const moved = swarm(all, { radius: 2, reach: 30, slope, field });
      for (const [index, spot] of moved.entries()) if (!isIn(spot)) expect(spot).toEqual(all[index]);
    }),
  );
});
