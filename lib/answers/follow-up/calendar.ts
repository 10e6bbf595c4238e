import type { Case } from "../frames/cases";

const quarterDays = 365.25 / 4;
const yearDays = 365.25;

/**
 * The middle of the quarter of surgery (of the year, where a unit keeps years only), in days since the year 0: all of the calendar that the
 * registry knows. A date worked out from it can err by half a quarter, 46 days, or half a year.
 */
export function middleOfSurgeryQuarter({ look }: Case): number | null {
  const year = look("surgeryYear");
  const quarter = look("surgeryQuarter");
  if (typeof year !== "number") return null;
  const within = typeof quarter === "number" ? (quarter - 0.5) * quarterDays : yearDays / 2;
  return year * yearDays + within;
}

export const calendarFields = ["surgeryYear", "surgeryQuarter"] as const;

/** Days from surgery on which anything of the segment was recorded after it: films, visits, last seen, healing, removals. */
export function seenDays({ segment }: Case): readonly number[] {
  const days = [
    segment.lastFollowUpDay,
    segment.lastFilmDay,
    segment.lastNotHealedDay,
    segment.consolidationDay,
    segment.fullWeightBearingDay,
    segment.fixatorRemovalDay,
    segment.implantRemovalDay,
    ...segment.visits.map(({ visitDay }) => visitDay),
  ];
  return days.flatMap((day) => (day !== null && day > segment.surgeryDay ? [day - segment.surgeryDay] : []));
}

/** The closing date of the data: the latest day on which anyone was seen, as far as quarters tell. `null` in an empty registry. */
export function closingDate(cases: readonly Case[]): number | null {
  const dates = cases.flatMap((one) => {
    const middle = middleOfSurgeryQuarter(one);
    return middle === null ? [] : [middle + Math.max(0, ...seenDays(one))];
  });
  return dates.length === 0 ? null : dates.reduce((a, b) => Math.max(a, b));
}
