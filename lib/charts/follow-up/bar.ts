import { hatch } from "../place/hatch";
import { textWidth } from "../place/text-width";
import { grouped } from "../say/numbers";
import type { Mark } from "../scene";
import type { Fate } from "./record";

export type Piece = { readonly x: number; readonly y: number; readonly width: number; readonly height: number };

/** Each fate has a ground of its own: full, empty, slanted lines, ink, and a dotted outline. */
export function pieceMarks(fate: Fate, piece: Piece, label?: string): Mark[] {
  const named = label === undefined ? {} : { label };
  const { x, y, width, height } = piece;
  const outline = `M${x} ${y}H${x + width}V${y + height}H${x}Z`;
  switch (fate) {
    case "seen":
      return [{ mark: "band", ...piece, ink: "series1", ...named }];
    case "due":
      return [{ mark: "path", d: outline, ink: "ink", weight: 1.3, ...named }];
    case "lost":
      return [
        { mark: "path", d: hatch(piece, 5), ink: "series5", weight: 1 },
        { mark: "path", d: outline, ink: "series5", weight: 1.3, ...named },
      ];
    case "dead":
      return [{ mark: "band", ...piece, ink: "ink", ...named }];
    case "notYetDue":
      return [{ mark: "path", d: outline, ink: "muted", weight: 1, dash: "dot", ...named }];
  }
}

const size = 12.5;

/** The number in its piece, where it fits on a plain ground. */
export function numberMark(n: number, fate: Fate, { x, y, width, height }: Piece): Mark[] {
  const text = grouped(n);
  if (fate === "lost" || textWidth(text, size) + 8 > width) return [];
  const ink = fate === "seen" || fate === "dead" ? "paper" : "ink";
  return [{ mark: "text", x: x + width / 2, y: y + height / 2 + size * 0.34, text, ink, size, anchor: "middle" }];
}
