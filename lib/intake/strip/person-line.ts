const yearStep = 10_000;

/** A calendar day on the person's own line: only differences between days of one person mean anything (ids.md §1). */
export function dayOnLine(dayNumber: number, shiftDays: number): number {
  return dayNumber - shiftDays;
}

/**
 * The surgery day of a person whose file holds no dates: a label made of the row alone, so that the order of files can't matter.
 * Other days of the row are this plus the duration; no difference between two operations of such a person means anything.
 * @throws RangeError when the year lies outside 1900–2199 or the episode outside 1–9999
 * @example undatedSurgeryDay(2021) // => 20210001
 */
export function undatedSurgeryDay(surgeryYear: number, episode: number | null = null): number {
  const number = episode ?? 1;
  if (!Number.isInteger(surgeryYear) || surgeryYear < 1900 || surgeryYear > 2199)
    throw new RangeError(`undatedSurgeryDay requires a year from 1900 to 2199, received ${surgeryYear}`);
  if (!Number.isInteger(number) || number < 1 || number >= yearStep)
    throw new RangeError(`undatedSurgeryDay requires an episode from 1 to 9999, received ${number}`);
  return yearStep * surgeryYear + number;
}
