import type { Axis } from "../axis/axis";
import { uprightHairlines } from "../axis/bottom-axis";
import type { Mark } from "../scene";
import type { TreatmentForFigure } from "./record";
import { dayText } from "./words";

const stepPx = 15;
/** Height from none to four. */
export const corticesPx = 4 * stepPx;
const bridged = 3;

type Place = { readonly y: number; readonly left: number; readonly right: number };

/** Cortices bridged on each film, from none at the foot to four, with the line that three of four must reach. */
export function corticesMarks(films: TreatmentForFigure["films"], axis: Axis, { y, left, right }: Place): readonly Mark[] {
  if (films.length === 0) return [];
  const at = (cortices: number) => y + (4 - cortices) * stepPx;
  const levels = [0, 1, 2, 3, 4].flatMap((cortices): Mark[] => [
    cortices === bridged
      ? { mark: "rule", x1: left, x2: right, y1: at(cortices), y2: at(cortices), ink: "muted", weight: 1, dash: "long" }
      : { mark: "rule", x1: left, x2: right, y1: at(cortices), y2: at(cortices), ink: "hairline", weight: 1 },
    { mark: "text", x: left - 8, y: at(cortices) + 4.2, text: String(cortices), ink: "muted", size: 12.5, anchor: "end" },
  ]);
  const head: Mark = { mark: "text", x: 0, y: y - 12, text: "cortices bridged, of 4, on each film", ink: "muted", size: 12.5 };
  const points = films.map(({ day, cortices }) => `${axis.at(day)} ${at(cortices)}`);
  const line: Mark[] = points.length > 1 ? [{ mark: "path", d: `M${points.join("L")}`, ink: "series1", weight: 1.25 }] : [];
  const discs = films.map(
    ({ day, cortices }): Mark => ({
      mark: "symbol",
      shape: "disc",
      x: axis.at(day),
      y: at(cortices),
      size: 3.6,
      ink: "series1",
      label: `${dayText(day)}: ${cortices} of 4 cortices bridged`,
    }),
  );
  return [...uprightHairlines(axis, { from: y, to: y + corticesPx }), head, ...levels, ...line, ...discs];
}
