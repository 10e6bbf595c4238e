import { isDay } from "../cells/cell-read";
import { type CalendarDate, calendarDateOf, dayOnLine, undatedSurgeryDay } from "../strip";
import { type Draft, findPart, type Part } from "./draft";

/** When a row's surgery was. `dated`: on the person's line by its date; `undated`: by a label made of year and episode. */
export type Surgery =
  | { readonly line: "dated"; readonly day: number; readonly date: CalendarDate }
  | { readonly line: "undated"; readonly day: number; readonly year: number };

/** The surgery of a row of segments, or `null` when neither date nor year is there. */
export function surgeryOf(draft: Draft, shiftDays: number): Surgery | null {
  const segment = findPart(draft, "segment");
  if (!segment) return null;
  const { surgeryDay, surgeryYear, episode } = segment.values;
  if (isDay(surgeryDay) && "on" in surgeryDay) {
    return { line: "dated", day: dayOnLine(surgeryDay.on, shiftDays), date: calendarDateOf(surgeryDay.on) };
  }
  if (typeof surgeryYear !== "number") return null;
  return { line: "undated", day: undatedSurgeryDay(surgeryYear, typeof episode === "number" ? episode : null), year: surgeryYear };
}

/** Whether a part holds a calendar date. */
export function holdsDate({ values }: Part): boolean {
  return Object.values(values).some((value) => isDay(value) && "on" in value);
}
