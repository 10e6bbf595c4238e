import { expect, test } from "vitest";
import { raise } from "@/lib/charts/place/fit-pile";
import { spreadTies } from "@/lib/charts/place/spread-ties";

const heap = (x: number, n: number) => new Array<number>(n).fill(x);

test("values that don't heap keep their x", () => {
  const xs = [...heap(10, 11), 50, 90.5];
  expect(spreadTies(xs, 4)).toEqual(xs);
});

test.each([2, 3, 4.5])("whole units stand in blocks about their place, which never touch the next (radius %d)", (radius) => {
  const step = 40;
  const spread = spreadTies([...heap(100, 60), ...heap(100 + step, 30), 100 + 2 * step], radius);
  const first = spread.slice(0, 60);
  const second = spread.slice(60, 90);
  expect((Math.min(...first) + Math.max(...first)) / 2).toBeCloseTo(100, 9);
  expect(Math.min(...second) - Math.max(...first)).toBeGreaterThan(2 * radius);
});

test("forty of one value, six abreast in a step of 50 px, stand seven rows high, and none overlaps", () => {
  const { xs, heights } = raise([...heap(100, 40), ...heap(150, 5)], 3, 500);
  expect(Math.max(...heights)).toBeCloseTo(3 + 6 * 6, 9);
  for (let i = 0; i < xs.length; i++)
    for (let j = 0; j < i; j++)
      expect(Math.hypot((xs[i] ?? 0) - (xs[j] ?? 0), (heights[i] ?? 0) - (heights[j] ?? 0))).toBeGreaterThan(2 * 3 - 1e-3);
});
