import type { Head } from "../head/lay-head";
import { countsText, totalText } from "../say/excluded";
import { counted, decimals } from "../say/numbers";
import { shownEstimate } from "../say/shown-estimate";
import { type ShownUnit, shownUnit, valueText } from "../say/shown-unit";
import { type Course, type CourseGroup, type CourseRecord, lagsOf, ratesOf } from "./record";

export const done = "with visits";

/** What stands over a group: the rate distracted, the rates prescribed, counts. */
export function headOf(group: CourseGroup): Head {
  const rate = shownEstimate(group.rate, shownUnit("mm/day"));
  const lines = group.courses.length === 0 ? [] : [prescribedText(group)];
  return { name: group.label, estimate: `${group.n === 0 ? "" : "rate "}${rate}`, lines, counts: [countsText(group, "segment", done)] };
}

/** `prescribed 0.75 to 1.00 mm/day; nothing prescribed is recorded of 3 segments`. */
export function prescribedText(group: CourseGroup): string {
  const rates = ratesOf(group);
  const without = group.courses.filter(({ rateMmPerDay }) => rateMmPerDay === null).length;
  if (rates === null) return "no prescribed rate is recorded";
  const [slowest, fastest] = rates.map((rate) => decimals(rate, 2));
  const span = slowest === fastest ? `${slowest}` : `${slowest} to ${fastest}`;
  return `prescribed ${span} mm/day${without === 0 ? "" : `; of ${counted(without, "segment")} no rate is recorded`}`;
}

/** What a reader hears of one course: `48 mm by day 52, 5 visits, 4 mm behind its prescription of 1.00 mm/day`. */
export function courseText(course: Course, unit: ShownUnit, name: string | null): string {
  const last = course.visits.at(-1);
  if (last === undefined) return "no visit";
  const words = `${valueText(last.distractedMm, unit)} by day ${last.day}, ${counted(course.visits.length, "visit")}, ${againstText(course, unit)}`;
  return name === null ? words : `${name}: ${words}`;
}

function againstText(course: Course, unit: ShownUnit): string {
  const ahead = lagsOf(course).at(-1)?.aheadMm;
  if (ahead === undefined || course.rateMmPerDay === null) return "no rate recorded";
  const where = Math.abs(ahead) < 0.5 ? "on" : `${valueText(Math.abs(ahead), unit)} ${ahead < 0 ? "behind" : "ahead of"}`;
  return `${where} its prescription of ${decimals(course.rateMmPerDay, 2)} mm/day`;
}

export function describe(record: CourseRecord, unit: ShownUnit): string {
  const groups = record.groups.map((group) => {
    const { estimate = "", lines = [], counts = [] } = headOf(group);
    const lag = (group.lag ?? []).map(
      ({ day, median }) => `median ${valueText(Math.abs(median), unit)} ${median < 0 ? "behind" : "ahead"} on day ${day}`,
    );
    return `${group.label}: ${[estimate, ...lines, ...lag, ...counts].join("; ")}.`;
  });
  const fields =
    "Above, each segment is a line through its visits: days from the start of distraction across, length distracted upwards, what was prescribed behind. Below, the same as ahead of or behind each segment’s own prescription.";
  return [fields, `${totalText(record.groups, "segment", done)}.`, ...groups].join(" ");
}
