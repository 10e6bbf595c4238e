import type { HealingAnswer } from "@/lib/answers";
import { type ClockUnit, drawSvg, layoutHealing, once } from "@/lib/charts";

/** Drawings of an answer, as long as the answer is kept. */
const drawingsOf = once((_answer: HealingAnswer) => new Map<string, string>());

/** The figure of healing at a width, px; an answer asked for again is not drawn again. */
export function drawingOf(answer: HealingAnswer, { width, unit }: { readonly width: number; readonly unit: ClockUnit }): string {
  const drawings = drawingsOf(answer);
  const id = `${width} ${unit}`;
  const svg = drawings.get(id) ?? drawSvg(layoutHealing(answer, { width, unit }));
  drawings.set(id, svg);
  return svg;
}
