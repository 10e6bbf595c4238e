import { readFileSync } from "node:fs";
import path from "node:path";
import { expect, test } from "vitest";
import { inks } from "@/lib/charts";

const css = readFileSync(path.resolve(import.meta.dirname, "../../../app/_look/tokens.css"), "utf8");
const figureCss = readFileSync(path.resolve(import.meta.dirname, "../../../app/_look/figure.css"), "utf8");
const [light = "", dark = ""] = css.split("prefers-color-scheme: dark");

/** Relative luminance and contrast ratio: WCAG 2.2, definitions. */
function contrast(a: string, b: string): number {
  const [low = 0, high = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (high + 0.05) / (low + 0.05);
}

function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const channel = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function token(sheet: string, name: string): string {
  const value = new RegExp(`--${name}: (#[0-9a-f]{6});`, "i").exec(sheet)?.[1];
  if (!value) throw new RangeError(`token requires a colour called ${name}`);
  return value;
}

test.each(Object.entries(inks))("the page's %s is the drawing's", (name, hex) => {
  expect(token(light, name).toUpperCase()).toBe(hex);
  for (const use of ["fill", "stroke"]) expect(figureCss).toContain(`.${use}-${name} {`);
});

test.each([light, dark])("words have a contrast of 4.5 : 1 and marks of 3 : 1 on their ground (WCAG 2.2, 1.4.3 and 1.4.11)", (sheet) => {
  const paper = token(sheet, "paper");
  for (const name of ["ink", "muted", "deep", "warm"]) expect(contrast(token(sheet, name), paper)).toBeGreaterThanOrEqual(4.5);
  for (const n of [1, 2, 3, 4, 5]) expect(contrast(token(sheet, `series${n}`), paper)).toBeGreaterThanOrEqual(3);
});
