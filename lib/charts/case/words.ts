import { counted, decimals } from "../say/numbers";
import type { PhaseForFigure } from "./record";

const names: Readonly<Record<PhaseForFigure["phase"], string>> = {
  latency: "latency",
  distraction: "distraction",
  consolidation: "consolidation",
  rescue: "rescue",
};

/** `distraction, 40 days`; a stretch that had not ended says so. */
export function phaseText({ phase, from, to, open }: PhaseForFigure): string {
  return `${names[phase]}, ${counted(to - from, "day")}${open ? " so far" : ""}`;
}

/** A day on the figure's axis: `day 40`, `day −9`. */
export function dayText(day: number): string {
  return `day ${decimals(day, 0)}`;
}
