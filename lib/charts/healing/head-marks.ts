import { textWidth, wrapText } from "../place/text-width";
import { estimateText } from "../say/estimate-text";
import type { ClockUnit } from "../say/units";
import type { Mark } from "../scene";
import type { HealingGroupForFigure } from "./record";
import { countsText, excludedText } from "./say";

const sizes = { name: 15, estimate: 13.5, counts: 12.5 } as const;
const linePx = 18;

/** What stands over a group: its name, its mean in the one form, and its counts; on one line where there is room, wrapped where not. */
export function headMarks(
  group: HealingGroupForFigure,
  { y, width, unit }: { y: number; width: number; unit: ClockUnit },
): { readonly marks: readonly Mark[]; readonly height: number } {
  const estimate = estimateText(group.mean, unit);
  const name = wrapText(group.label, sizes.name, width);
  const shares = textWidth(group.label, sizes.name) * 1.06 + 24 + textWidth(estimate, sizes.estimate) <= width;
  const estimates = shares ? [] : wrapText(estimate, sizes.estimate, width);
  const counts = wrapText(sayCounts(group), sizes.counts, width);
  const lines = [
    ...name.map((text) => ({ text, size: sizes.name, ink: "ink", weight: "bold" }) as const),
    ...estimates.map((text) => ({ text, size: sizes.estimate, ink: "ink", weight: "normal" }) as const),
    ...counts.map((text) => ({ text, size: sizes.counts, ink: "muted", weight: "normal" }) as const),
  ];
  const marks: Mark[] = lines.map((line, index) => ({ mark: "text", x: 0, y: y + index * linePx + 14, ...line }));
  if (shares) marks.push({ mark: "text", x: width, y: y + 14, text: estimate, ink: "ink", size: sizes.estimate, anchor: "end" });
  return { marks, height: lines.length * linePx };
}

function sayCounts(group: HealingGroupForFigure): string {
  if (group.segments === 0) return "no segment in this group";
  if (group.marks.length > 0) return countsText(group);
  const why = excludedText(group);
  return `${countsText(group)}${why === "" ? "" : ` (${why})`}`;
}
