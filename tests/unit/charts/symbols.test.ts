import { expect, test } from "vitest";
import { apart, type Look, mostNamed, symbolMarksByLook } from "@/lib/charts/place/symbols";

const disc: Look = { shape: "disc", size: 2, ink: "series1" };
const triangle: Look = { shape: "triangle", size: 3, ink: "series2" };

/** Symbols on a line, every third a triangle. */
function symbols(count: number) {
  const xs = Array.from({ length: count }, (_, place) => place);
  return {
    xs,
    ys: xs.map((x) => x / 2),
    lookOf: (place: number) => (place % 3 === 0 ? triangle : disc),
    labelOf: (place: number) => `${place} days`,
  };
}

test("few are a mark each, in their order", () => {
  const marks = symbolMarksByLook(symbols(mostNamed));
  expect(marks).toHaveLength(mostNamed);
  expect(marks.slice(0, 2)).toEqual([
    { mark: "symbol", ...triangle, x: 0, y: 0, label: "0 days" },
    { mark: "symbol", ...disc, x: 1, y: 0.5, label: "1 days" },
  ]);
});

test("of very many those of one look stand together, and each keeps its place and what it says", () => {
  const count = mostNamed + 1;
  const marks = symbolMarksByLook(symbols(count));
  expect(marks.map(({ mark, ink }) => [mark, ink])).toEqual([
    ["symbols", "series2"],
    ["symbols", "series1"],
  ]);
  const single = marks.flatMap(apart).map((mark) => (mark.mark === "symbol" ? [mark.x, mark.y, mark.shape, mark.label] : []));
  const expected = Array.from({ length: count }, (_, x) => [x, x / 2, x % 3 === 0 ? "triangle" : "disc", `${x} days`]);
  expect(single.sort(([a], [b]) => Number(a) - Number(b))).toEqual(expected);
});
