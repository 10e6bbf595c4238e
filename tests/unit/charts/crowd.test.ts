import { expect, test } from "vitest";
import { drawSvg, type Mark, type Scene } from "@/lib/charts";

/** So many named discs on ten lines, the last few on one spot. */
function discs(count: number): Scene {
  const marks = Array.from({ length: count }, (_, i): Mark => {
    const spot = Math.min(i, 9000);
    return { mark: "symbol", shape: "disc", x: spot % 900, y: Math.floor(spot / 900), size: 1, ink: "series1", label: `${i} days` };
  });
  return { width: 900, height: 20, title: "t", description: "Each segment is a mark.", marks };
}

test("two thousand marks keep their names", () => {
  const svg = drawSvg(discs(2000));
  expect(svg.match(/data-mark=/g)).toHaveLength(2000);
  expect(svg).toContain("<desc>Each segment is a mark.</desc>");
});

test("more are drawn together, one a spot, and the description says so", () => {
  const svg = drawSvg(discs(12_000));
  expect(svg).not.toContain("data-mark=");
  expect(svg.match(/<path/g)).toHaveLength(1);
  // 9 001 spots, none of them lost: ten full lines of 900, and one spot more
  const strokes = [...svg.matchAll(/M(-?[\d.]+) (\d+)h([\d.]+)/g)].map(([, x, y, length]) => [Number(x), Number(y), Number(length)]);
  expect(strokes).toEqual([...Array.from({ length: 10 }, (_, y) => [-1, y, 901]), [-1, 10, 2]]);
  expect(svg).toContain('stroke-width="2"');
  expect(svg).toContain("Where marks crowd they are drawn together, without their names.");
});

test("marks of another look are drawn apart, and one that stands alone keeps its name", () => {
  const { marks, ...scene } = discs(12_000);
  const alone: Mark = { mark: "symbol", shape: "disc", x: 500, y: 900, size: 1, ink: "series1", label: "far from all" };
  const other: Mark = { mark: "symbol", shape: "triangle", x: 3, y: 3, size: 2, ink: "series2", label: "after bone surgery" };
  const svg = drawSvg({ ...scene, marks: [...marks, other, alone] });
  expect(svg.match(/<path/g)).toHaveLength(2);
  expect(svg).toContain("fill-series2");
  expect(svg.match(/data-mark=/g)).toHaveLength(1);
  expect(svg).toContain("far from all");
});

test("symbols in columns are drawn as the same symbols one by one", () => {
  const { marks, ...scene } = discs(12_000);
  const spots = marks.map((mark) => (mark.mark === "symbol" ? mark : expect.unreachable()));
  const alone = { mark: "symbol", shape: "disc", x: 500, y: 900, size: 1, ink: "series1", label: "far from all" } as const;
  const all = [...spots, alone];
  const columns = (of: typeof all): Mark => ({
    mark: "symbols",
    shape: "disc",
    size: 1,
    ink: "series1",
    xs: of.map(({ x }) => x),
    ys: of.map(({ y }) => y),
    labelOf: (place) => of[place]?.label ?? "",
  });
  expect(drawSvg({ ...scene, marks: [columns(all)] })).toBe(drawSvg({ ...scene, marks: all }));
  const few = all.slice(-3);
  expect(drawSvg({ ...scene, marks: [columns(few)] })).toBe(drawSvg({ ...scene, marks: few }));
});
