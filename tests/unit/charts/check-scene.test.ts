import { expect, test } from "vitest";
import { checkScene, type Mark, type Scene } from "@/lib/charts";

const scene = (...marks: readonly Mark[]): Scene => ({ width: 200, height: 100, title: "Title", description: "Description", marks });
const codes = (of: Scene) => checkScene(of).map(({ code }) => code);
const text = (words: string, x: number, y: number, more: object = {}): Mark => ({
  mark: "text",
  x,
  y,
  text: words,
  size: 13,
  ink: "ink",
  ...more,
});
const disc = (x: number, y: number): Mark => ({ mark: "symbol", shape: "disc", x, y, size: 4, ink: "series1" });
const rule = (x1: number, y1: number, x2: number, y2: number): Mark => ({ mark: "rule", x1, y1, x2, y2, ink: "ink" });

test("a sound drawing has no warning", () => {
  expect(checkScene(scene(text("one", 10, 20), text("two", 10, 40), disc(100, 50), rule(0, 90, 200, 90)))).toEqual([]);
});

test.each([
  ["a symbol", disc(Number.NaN, 10)],
  ["a rule", rule(0, 0, Number.POSITIVE_INFINITY, 0)],
  ["a path", { mark: "path", d: "M0 0LNaN 4", ink: "ink" } as Mark],
  ["a band", { mark: "band", x: 0, y: 0, width: Number.NaN, height: 2, ink: "ink" } as Mark],
  ["a text", text("word", 1, Number.NaN)],
  ["a path of a letter that isn't drawn here", { mark: "path", d: "M0 0C1 1 2 2 3 3", ink: "ink" } as Mark],
])("a coordinate of %s that is no number is found", (_, mark) => {
  expect(codes(scene(mark))).toEqual(["no-number"]);
});

test.each([
  ["a text that runs over the right edge", text("a long line of words", 120, 20)],
  ["a text that is set back over the left edge", text("a long line", 30, 20, { anchor: "end" })],
  ["a text above the top", text("word", 10, 4)],
  ["a symbol below the foot", disc(100, 110)],
  ["a path", { mark: "path", d: "M0 0H220", ink: "ink" } as Mark],
])("%s is found", (_, mark) => {
  expect(codes(scene(mark))).toEqual(["outside"]);
});

test("texts over each other are found, texts beside each other are not", () => {
  expect(codes(scene(text("first", 10, 20), text("second", 20, 24)))).toEqual(["texts-overlap"]);
  expect(codes(scene(text("first", 10, 20), text("second", 60, 20)))).toEqual([]);
});

test.each([
  ["a rule across", rule(0, 16, 200, 16), ["text-struck"]],
  ["a slanted rule", rule(0, 0, 60, 40), ["text-struck"]],
  ["a disc", disc(24, 16), ["text-struck"]],
  ["a rule under it", rule(0, 26, 200, 26), []],
  ["a rule that ends before it", rule(60, 16, 200, 16), []],
  ["a band behind it", { mark: "band", x: 0, y: 0, width: 200, height: 40, ink: "deep", opacity: 0.1 } as Mark, []],
])("%s: ink through a text", (_, mark, found) => {
  expect(codes(scene(text("words", 10, 20), mark))).toEqual(found);
});

test("a figure without a name, a description or a size, and a mark without a word are found", () => {
  expect(codes({ ...scene(), title: " " })).toEqual(["unnamed"]);
  expect(codes({ ...scene(), description: "" })).toEqual(["unnamed"]);
  expect(codes({ ...scene(), height: Number.NaN })).toEqual(["unnamed"]);
  expect(codes(scene({ ...disc(10, 10), label: "" } as Mark))).toEqual(["unnamed"]);
});
