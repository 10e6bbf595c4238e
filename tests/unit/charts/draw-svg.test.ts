import fc from "fast-check";
import { expect, test } from "vitest";
import { drawSvg, inks, type Mark, type Scene } from "@/lib/charts";
import { escapeXml } from "@/lib/charts/draw/escape";

const scene = (marks: readonly Mark[], more: Partial<Scene> = {}): Scene =>
  Object.freeze({ width: 100, height: 50, title: "Title", description: "Description", marks: Object.freeze(marks), ...more });
const at = { x: 10, y: 20, size: 4, ink: "series1" } as const;

test("five predefined entities stand for the five characters (XML 1.0, §4.6)", () => {
  expect(escapeXml(`&<>"'`)).toBe("&amp;&lt;&gt;&quot;&#39;");
});

test("characters that XML forbids are left out (XML 1.0, §2.2)", () => {
  expect(escapeXml("a\u0000b\u001Fc\uD800d\uFFFEe\tf")).toBe("abcde\tf");
});

test("whatever a label or title holds, no markup of its own comes out", () => {
  fc.assert(
    fc.property(fc.string({ unit: "binary" }), fc.string(), (label, title) => {
      const svg = drawSvg(scene([{ mark: "symbol", shape: "disc", ...at, label }], { title }));
      expect(svg.match(/</g)).toHaveLength("<svg <title></title><desc></desc><circle/></svg>".split("<").length - 1);
      expect(svg.match(/"/g)?.length).toBe(2 * (svg.match(/ [a-z][\w:-]*="/gi)?.length ?? 0));
    }),
  );
});

test("the drawing has a role, a title first and a description", () => {
  const svg = drawSvg(scene([], { title: "Healing <by> bone", description: "In words" }));
  expect(svg).toMatch(/^<svg [^>]*role="img"[^>]*><title>Healing &lt;by&gt; bone<\/title><desc>In words<\/desc>/);
});

test("colour is a presentation attribute with a class beside it, never a style", () => {
  const marks: Mark[] = [
    { mark: "symbol", shape: "cross", ...at },
    { mark: "symbol", shape: "square", ...at, hollow: true },
    { mark: "rule", x1: 0, y1: 0, x2: 5, y2: 0, ink: "hairline", dash: "long" },
    { mark: "band", x: 0, y: 0, width: 5, height: 5, ink: "muted", opacity: 0.2 },
    { mark: "path", d: "M0 0L1.23456 2", ink: "warm" },
    { mark: "text", x: 1, y: 1, text: "t", ink: "ink", size: 12, weight: "bold", anchor: "end" },
  ];
  const svg = drawSvg(scene(marks));
  expect(svg).not.toContain("style");
  expect(svg).toContain(`class="stroke-warm" stroke="${inks.warm}"`);
  expect(svg).toContain(`class="fill-ink" fill="${inks.ink}"`);
  expect(svg).toContain('stroke-dasharray="8 4"');
  expect(svg).toContain('d="M0 0L1.235 2"');
  expect(svg).toContain('text-anchor="end"');
});

test("labelled marks are numbered in their order, the others are not", () => {
  const mark = { mark: "symbol", shape: "disc", ...at } as const;
  const svg = drawSvg(scene([{ ...mark, label: "first" }, mark, { ...mark, shape: "triangle", label: "second" }]));
  expect([...svg.matchAll(/data-mark="(\d+)" aria-label="(\w+)"/g)].map(([, index, label]) => [index, label])).toEqual([
    ["0", "first"],
    ["1", "second"],
  ]);
});

test.each(["disc", "diamond", "square", "triangle", "cross"] as const)("a %s is drawn about its centre", (shape) => {
  const svg = drawSvg(scene([{ mark: "symbol", shape, ...at }]));
  const numbers = [...(/ (?:d|cx)="([^"]+)"/.exec(svg)?.[1] ?? "").matchAll(/-?[\d.]+/g)].map(Number);
  const xs =
    shape === "disc" ? numbers : shape === "square" ? [numbers[0] ?? 0, numbers[2] ?? 0] : numbers.filter((_, index) => index % 2 === 0);
  expect((Math.min(...xs) + Math.max(...xs)) / 2).toBeCloseTo(10, 2);
});
