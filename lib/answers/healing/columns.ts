import type { Censored, Measured } from "./read";

/**
 * The measured of a group, then its censored, as columns. Every summary goes over all of them: numbers that lie side by side are read
 * many times faster than those of objects that lie anywhere.
 */
export type Columns = {
  /** How many of the rows are measured; they stand first. */
  readonly measured: number;
  readonly value: readonly number[];
  readonly days: readonly number[];
  /** NaN: no gain. */
  readonly gainMm: readonly number[];
  readonly person: readonly number[];
  /** 1 of the measured, 0 of the censored. */
  readonly event: readonly number[];
};

export function columnsOf(measured: readonly Measured[], censored: readonly Censored[]): Columns {
  const columns = { value: [] as number[], days: [] as number[], gainMm: [] as number[], person: [] as number[], event: [] as number[] };
  const write = ({ value, days, gainMm, person }: Measured | Censored, event: number) => {
    columns.value.push(value);
    columns.days.push(days);
    columns.gainMm.push(gainMm ?? Number.NaN);
    columns.person.push(person);
    columns.event.push(event);
  };
  for (const row of measured) write(row, 1);
  for (const row of censored) write(row, 0);
  return { measured: measured.length, ...columns };
}

/** The gains that are known. */
export function knownGains({ gainMm }: Columns): number[] {
  return gainMm.filter((gain) => !Number.isNaN(gain));
}
