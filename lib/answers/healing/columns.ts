import type { Case } from "../frames/cases";
import { type ClockColumns, kinds } from "./read";

/** The measured of a group, then its censored, as columns. */
export type Columns = {
  /** How many of the rows are measured; they stand first. */
  readonly measured: number;
  /** Place among the cases of the group. */
  readonly place: readonly number[];
  readonly segment: readonly number[];
  readonly person: readonly number[];
  readonly value: readonly number[];
  readonly days: readonly number[];
  /** NaN: no gain. */
  readonly gainMm: readonly number[];
  /** 1 of the measured, 0 of the censored. */
  readonly event: readonly number[];
};

/** Columns by clock, as long as the cases and the clock are kept: what is held side by side are often the groups of a page's own split. */
const kept = new WeakMap<readonly Case[], WeakMap<ClockColumns, Columns>>();

/** Columns of cases that the clock was read on. */
export function columnsOf(cases: readonly Case[], clock: ClockColumns): Columns {
  const clocks = kept.get(cases) ?? new WeakMap<ClockColumns, Columns>();
  kept.set(cases, clocks);
  const columns = clocks.get(clock) ?? gathered(cases, clock);
  clocks.set(clock, columns);
  return columns;
}

function gathered(cases: readonly Case[], clock: ClockColumns): Columns {
  const rows: number[] = [];
  const place: number[] = [];
  const take = (kind: number) => {
    for (let at = 0; at < cases.length; at++) {
      const { row } = cases[at] as Case;
      if (clock.kind[row] !== kind) continue;
      rows.push(row);
      place.push(at);
    }
    return rows.length;
  };
  const measured = take(kinds.measured);
  take(kinds.censored);
  const of = (column: Float64Array) => rows.map((row) => column[row] as number);
  return {
    measured,
    place,
    segment: of(clock.segment),
    person: of(clock.person),
    value: of(clock.value),
    days: of(clock.days),
    gainMm: of(clock.gainMm),
    event: rows.map((_, at) => (at < measured ? 1 : 0)),
  };
}

/** The gains that are known. */
export function knownGains({ gainMm }: Columns): number[] {
  return gainMm.filter((gain) => !Number.isNaN(gain));
}

/** Rows with days and gain, for what asks for both. */
export type WithGain = {
  readonly days: readonly number[];
  readonly healed: readonly number[];
  readonly gainCm: readonly number[];
  readonly patient: readonly number[];
  /** Row of the columns. */
  readonly row: readonly number[];
};

const keptWithGain = new WeakMap<Columns, { all?: WithGain; alsoDays?: WithGain }>();

/** The rows of columns with a gain above nothing; `alsoDays`: and with days above nothing, as logarithms ask. */
export function withGain(columns: Columns, { alsoDays }: { readonly alsoDays: boolean }): WithGain {
  const held = keptWithGain.get(columns) ?? {};
  keptWithGain.set(columns, held);
  const which = alsoDays ? "alsoDays" : "all";
  held[which] ??= pickedWithGain(columns, alsoDays);
  return held[which];
}

function pickedWithGain({ days, gainMm, person, event }: Columns, alsoDays: boolean): WithGain {
  const rows = {
    days: [] as number[],
    healed: [] as number[],
    gainCm: [] as number[],
    patient: [] as number[],
    row: [] as number[],
  };
  for (let row = 0; row < days.length; row++) {
    const [day, gain] = [days[row] as number, gainMm[row] as number];
    // a missing gain is above nothing
    if (!(gain > 0) || (alsoDays && day <= 0)) continue;
    rows.days.push(day);
    rows.healed.push(event[row] as number);
    rows.gainCm.push(gain / 10);
    rows.patient.push(person[row] as number);
    rows.row.push(row);
  }
  return rows;
}

/** The healed of rows alone: they stand first. */
export function healedOf(rows: WithGain): WithGain {
  const censored = rows.healed.indexOf(0);
  const end = censored === -1 ? rows.healed.length : censored;
  const cut = (column: readonly number[]) => column.slice(0, end);
  return {
    days: cut(rows.days),
    healed: cut(rows.healed),
    gainCm: cut(rows.gainCm),
    patient: cut(rows.patient),
    row: cut(rows.row),
  };
}
