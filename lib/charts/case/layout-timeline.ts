import { type Axis, axisOf } from "../axis/axis";
import { bottomAxis, bottomAxisPx, uprightHairlines } from "../axis/bottom-axis";
import { type KeyEntry, layKey } from "../key/lay-key";
import { counted, listed } from "../say/numbers";
import { shownUnit } from "../say/shown-unit";
import type { Mark, Scene } from "../scene";
import { corticesMarks, corticesPx } from "./cortices";
import { momentEntries, momentMarks } from "./moments";
import type { PhaseForFigure, TreatmentForFigure } from "./record";
import { phaseMarks } from "./textures";
import { dayText, phaseText } from "./words";

const left = 20;
const right = 14;
const bandPx = 26;
const days = shownUnit("days");

/**
 * The treatment of one segment along one axis of days from surgery: its stretches as boxes told apart by texture, the moments that stand
 * out, and how many cortices were bridged on each film.
 * `width` px.
 */
export function layoutTimeline(record: TreatmentForFigure, { width = 880 }: { readonly width?: number } = {}): Scene {
  if (!(width >= 240)) throw new RangeError(`layoutTimeline requires a width of at least 240 px, received ${width}`);
  const text = { width, title: `Treatment of the ${record.title}`, description: descriptionOf(record) };
  const key = layKey([...record.phases.map(phaseEntry), ...momentEntries(record.moments)], { width, y: 0 });
  const axis = axisFor(record, width);
  const bandY = (record.phases.length + record.moments.length === 0 ? 0 : key.height) + 10;
  const moments = momentMarks(record.moments, axis.at, bandY + bandPx + 6);
  const filmsY = bandY + bandPx + 6 + moments.height + (record.films.length > 0 ? 26 : 4);
  const films = corticesMarks(record.films, axis, { y: filmsY, left, right: width - right });
  const axisY = filmsY + (record.films.length > 0 ? corticesPx + 10 : 0);
  return {
    ...text,
    height: Math.ceil(axisY + bottomAxisPx),
    marks: [
      ...key.marks,
      ...uprightHairlines(axis, { from: bandY + bandPx + 2, to: bandY + bandPx + 6 + moments.height }),
      ...bandMarks(record, axis, bandY),
      ...moments.marks,
      ...films,
      ...bottomAxis(axis, { y: axisY, left, right: width - right, title: "days from surgery" }),
    ],
  };
}

function axisFor({ phases, films, moments, lastDay }: TreatmentForFigure, width: number): Axis {
  const known = [0, lastDay, ...phases.map(({ to }) => to), ...films.map(({ day }) => day), ...moments.map(({ day }) => day)];
  const [from, to] = [Math.min(...known), Math.max(30, ...known)];
  return axisOf({ from, to, start: left, end: width - right, unit: days, ticks: width < 420 ? 4 : 8, nice: true });
}

function phaseEntry(phase: PhaseForFigure): KeyEntry {
  return {
    text: phaseText(phase),
    wide: 24,
    draw: (x, y) => phaseMarks(phase.phase, phase.open, { x, y: y - 6, width: phase.open ? 16 : 24, height: 12 }),
  };
}

/** A line from surgery to the last day known of, and the stretches upon it. */
function bandMarks({ phases, lastDay }: TreatmentForFigure, { at }: Axis, y: number): readonly Mark[] {
  const middle = y + bandPx / 2;
  const line: Mark = {
    mark: "rule",
    x1: at(0),
    x2: at(Math.max(0, lastDay)),
    y1: middle,
    y2: middle,
    ink: "muted",
    weight: 1,
    dash: "dot",
  };
  const boxes = phases.flatMap((phase): Mark[] => {
    const [x, width] = [at(phase.from), Math.max(1.5, at(phase.to) - at(phase.from))];
    const box = { x, y, width, height: bandPx };
    const label = `${dayText(phase.from)} to ${dayText(phase.to)}: ${phaseText(phase)}`;
    // paper under each box hides the line
    return [{ mark: "band", ...box, ink: "paper", label }, ...phaseMarks(phase.phase, phase.open, box)];
  });
  return [line, ...boxes];
}

function descriptionOf({ phases, films, moments, lastDay }: TreatmentForFigure): string {
  const told = phases.length === 0 ? "No stretch of the treatment has both its days recorded" : listed(phases.map(phaseText));
  const seen = films.length === 0 ? "no film with cortices" : `${counted(films.length, "film")} with cortices`;
  return `${told}; ${seen}, ${counted(moments.length, "moment")} marked; known to ${dayText(lastDay)} after surgery.`;
}
