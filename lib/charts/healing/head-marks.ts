import { layHead } from "../head/lay-head";
import { estimateText } from "../say/estimate-text";
import { reasonsText } from "../say/excluded";
import type { ClockUnit } from "../say/units";
import type { Mark } from "../scene";
import type { HealingGroupForFigure } from "./record";
import { countsText } from "./say";

/** What stands over a group: its name, its mean in the one form, and its counts. */
export function headMarks(
  group: HealingGroupForFigure,
  { y, width, unit }: { y: number; width: number; unit: ClockUnit },
): { readonly marks: readonly Mark[]; readonly height: number } {
  return layHead({ name: group.label, estimate: estimateText(group.mean, unit), counts: [sayCounts(group)] }, { x: 0, y, width });
}

function sayCounts(group: HealingGroupForFigure): string {
  if (group.segments === 0) return "no segment in this group";
  if (group.marks.length > 0) return countsText(group);
  const why = reasonsText(group);
  return `${countsText(group)}${why === "" ? "" : ` (${why})`}`;
}
