import { estimateText } from "../say/estimate-text";
import { counted, grouped, listed } from "../say/numbers";
import type { ClockUnit } from "../say/units";
import { excludedIn, type HealingGroupForFigure, type HealingRecordForFigure, isHealing, measuredIn, total } from "./record";

const mostNamed = 3;

/**
 * The answer in a sentence or two: the means in their one form, then how many bones stand outside them because they have not healed.
 * It states and never judges: whether groups differ is another question.
 */
export function answerOf(record: HealingRecordForFigure, unit: ClockUnit): string {
  const answered = record.groups.filter((group) => group.mean.estimate !== null);
  if (total(record.groups, (group) => group.segments) === 0) return "No segment in this cohort.";
  if (answered.length === 0)
    return `No ${record.groups.some(isHealing) ? "healed" : "measured"} segment to answer with: ${whyNot(record.groups)}.`;
  return `${meansText(answered, unit)} ${unhealedText(record.groups)}`.trim();
}

function meansText(groups: readonly HealingGroupForFigure[], unit: ClockUnit): string {
  const only = groups[0];
  if (groups.length === 1 && only) return `On average ${estimateText(only.mean, unit)}.`;
  const named = (group: HealingGroupForFigure) => `${group.label} ${estimateText(group.mean, unit)}`;
  if (groups.length <= mostNamed) return `On average: ${groups.map(named).join("; ")}.`;
  // a mean of one or two patients is no end of a range
  const sorted = groups.filter((group) => group.mean.lower !== null).sort((a, b) => (a.mean.estimate ?? 0) - (b.mean.estimate ?? 0));
  const [first, last] = [sorted[0], sorted.at(-1)];
  const all = counted(groups.length, "group");
  if (!first || !last || first === last)
    return `${all}, ${sorted.length === 0 ? "none" : "one"} with patients enough for an interval${first ? `: ${named(first)}` : ""}.`;
  const large = sorted.length === groups.length ? `Of ${all}` : `Of ${all}, ${sorted.length} with patients enough for an interval`;
  const placed = (group: HealingGroupForFigure) => `${group.label}, ${estimateText(group.mean, unit)}`;
  return `${large}: the lowest mean is that of ${placed(first)}; the highest that of ${placed(last)}.`;
}

function unhealedText(groups: readonly HealingGroupForFigure[]): string {
  const parts = [
    { n: total(groups, (group) => group.censored ?? 0), words: "not healed at the last film" },
    { n: total(groups, (group) => group.ended ?? 0), words: "ended unhealed" },
  ].filter(({ n }) => n > 0);
  const unhealed = parts.reduce((sum, { n }) => sum + n, 0);
  if (unhealed === 0) return "";
  const analysed = total(groups, measuredIn) + unhealed;
  const words = listed(parts.map((part) => `${grouped(part.n)} ${part.words}`));
  return `${words} of ${grouped(analysed)} analysed ${unhealed === 1 ? "is" : "are"} not in ${groups.length > 1 ? "these means" : "this mean"}.`;
}

function whyNot(groups: readonly HealingGroupForFigure[]): string {
  const unhealed = total(groups, (group) => (group.censored ?? 0) + (group.ended ?? 0));
  const segments = counted(
    total(groups, (group) => group.segments),
    "segment",
  );
  return `of ${segments}, ${grouped(unhealed)} not healed and ${grouped(total(groups, excludedIn))} left out`;
}
