import type { Dash, Ink, Shape } from "../scene";
import { bracketPath } from "../summary/lay-bracket";
import type { KeyEntry } from "./lay-key";

type Shaped = { readonly shape?: Shape; readonly ink?: Ink; readonly hollow?: boolean };

export function shapeEntry(text: string, { shape = "disc", ink = "series1", hollow = false }: Shaped = {}): KeyEntry {
  return {
    text,
    wide: 8,
    draw: (x, y) => [{ mark: "symbol", shape, x: x + 4, y, size: 4, ink, ...(hollow ? { hollow } : {}) }],
  };
}

type Lined = { readonly ink?: Ink; readonly dash?: Dash; readonly weight?: number };

export function lineEntry(text: string, { ink = "ink", dash = "solid", weight = 1.5 }: Lined = {}): KeyEntry {
  return { text, wide: 24, draw: (x, y) => [{ mark: "rule", x1: x, x2: x + 24, y1: y, y2: y, ink, dash, weight }] };
}

/** A light band: norm, tolerance or the band of limits. */
export function bandEntry(
  text: string,
  { ink = "deep", opacity = 0.14 }: { readonly ink?: Ink; readonly opacity?: number } = {},
): KeyEntry {
  return { text, wide: 22, draw: (x, y) => [{ mark: "band", x, y: y - 5, width: 22, height: 10, ink, opacity }] };
}

/** A short upright tick on a line: followed to here, no event yet. */
export function tickEntry(text: string, ink: Ink = "ink"): KeyEntry {
  return {
    text,
    wide: 18,
    draw: (x, y) => [{ mark: "path", d: `M${x} ${y}H${x + 18}M${x + 9} ${y - 5}V${y + 5}`, ink, weight: 1.5 }],
  };
}

export function boxEntry(text: string): KeyEntry {
  return {
    text,
    wide: 22,
    draw: (x, y) => [
      { mark: "path", d: `M${x} ${y - 4}H${x + 22}V${y + 4}H${x}Z`, ink: "muted", weight: 1 },
      { mark: "rule", x1: x + 10, x2: x + 10, y1: y - 6, y2: y + 6, ink: "ink", weight: 2 },
    ],
  };
}

export function bracketEntry(text: string, { hollow = false }: { readonly hollow?: boolean } = {}): KeyEntry {
  return {
    text,
    wide: 22,
    draw: (x, y) => [
      { mark: "path", d: bracketPath(x, x + 22, y, { half: 5 }), ink: "ink", weight: 1.5 },
      { mark: "symbol", shape: "diamond", x: x + 11, y, size: 3.6, ink: "ink", ...(hollow ? { hollow } : {}) },
    ],
  };
}
