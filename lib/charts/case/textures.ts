import type { Mark } from "../scene";
import type { PhaseForFigure } from "./record";

type Box = { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
type Paint = (box: Box) => readonly Mark[];

const stepPx = 6;

/** Diagonals through a box, rising (`way` 1) or falling (−1), each cut where the box ends. */
function diagonals({ x, y, width, height }: Box, way: 1 | -1): string {
  let d = "";
  for (let start = -height + stepPx / 2; start < width; start += stepPx) {
    const [from, to] = [Math.max(0, start), Math.min(width, start + height)];
    if (to <= from) continue;
    const [low, high] = [from - start, to - start];
    const at = (rise: number) => (way === 1 ? y + height - rise : y + rise);
    d += `M${x + from} ${at(low)}L${x + to} ${at(high)}`;
  }
  return d;
}

const light =
  (opacity: number): Paint =>
  (box) => [{ mark: "band", ...box, ink: "deep", opacity }];
const hatched =
  (...ways: readonly (1 | -1)[]): Paint =>
  (box) =>
    ways
      .map((way): Mark => ({ mark: "path", d: diagonals(box, way), ink: "deep", weight: 1.25 }))
      .filter((mark) => "d" in mark && mark.d !== "");

/**
 * What tells the stretches of a treatment apart, without colour: latency is empty, distraction hatched as what is drawn apart, consolidation
 * filled as bone fills, a rescue crossed.
 */
const paints: Readonly<Record<PhaseForFigure["phase"], Paint>> = {
  latency: () => [],
  distraction: hatched(1),
  consolidation: light(0.38),
  rescue: hatched(1, -1),
};

/** A stretch as a box of its texture: closed all round, or open to the right where it had not ended. */
export function phaseMarks(phase: PhaseForFigure["phase"], open: boolean, box: Box): readonly Mark[] {
  const { x, y, width, height } = box;
  const right = x + width;
  const outline = open ? `M${right} ${y}H${x}V${y + height}H${right}` : `M${x} ${y}H${right}V${y + height}H${x}Z`;
  const arrow: Mark[] = open
    ? [
        {
          mark: "path",
          d: `M${right + 2} ${y + 3}L${right + 8} ${y + height / 2}L${right + 2} ${y + height - 3}`,
          ink: "deep",
          weight: 1.5,
        },
      ]
    : [];
  return [...paints[phase](box), { mark: "path", d: outline, ink: "deep", weight: 1.25 }, ...arrow];
}
