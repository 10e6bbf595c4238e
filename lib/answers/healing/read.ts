import type { Reason } from "@/lib/codebook";
import { type IndexDefinition, readIndex } from "@/lib/outcomes";
import type { Registry, State } from "@/lib/registry";
import { type BaseCase, baseCases } from "../frames/base-cases";
import type { Case } from "../frames/cases";
import type { HealingMark } from "../types";

/** What became of a segment under a clock; `unread` until a question asks for it. */
export const kinds = { unread: 0, measured: 1, censored: 2, ended: 3, excluded: 4 } as const;

/**
 * What a clock read on the segments of a state, by their rows there, as columns: groups of a hundred thousand are gone through many times,
 * and numbers that lie side by side are read many times faster than those of objects that lie anywhere. NaN: none.
 */
export type ClockColumns = {
  readonly kind: Uint8Array;
  readonly segment: Float64Array;
  readonly person: Float64Array;
  readonly value: Float64Array;
  readonly days: Float64Array;
  readonly gainMm: Float64Array;
  readonly filmIntervalDays: Float64Array;
  /** 1: healed, after further bone surgery. */
  readonly rescued: Uint8Array;
  /** Of the excluded. */
  readonly because: (Reason | undefined)[];
  /** Of the measured and the censored. */
  readonly marks: (HealingMark | undefined)[];
};

const clocksKept = 3;
/** Columns of a state's segments by clock: splits and places differ, readings don't. */
const kept = new WeakMap<readonly BaseCase[], Map<string, ClockColumns>>();

/** Reads a clock on cases of a state, each once. @param boneNamed the cohort or the split names the bone */
export async function clockReader(
  registry: Registry,
  state: State,
  definition: IndexDefinition,
  boneNamed: boolean,
): Promise<(cases: readonly Case[]) => ClockColumns> {
  const base = await baseCases(registry, state);
  const clocks = kept.get(base) ?? new Map<string, ClockColumns>();
  kept.set(base, clocks);
  const id = JSON.stringify([definition, boneNamed]);
  const columns = clocks.get(id) ?? emptyColumns(base.length);
  clocks.delete(id);
  clocks.set(id, columns);
  const oldest = clocks.keys().next().value;
  if (clocks.size > clocksKept && oldest !== undefined) clocks.delete(oldest);
  return (cases) => {
    for (const one of cases) if (columns.kind[one.row] === kinds.unread) write(columns, one, definition, boneNamed);
    return columns;
  };
}

function emptyColumns(rows: number): ClockColumns {
  const numbers = () => new Float64Array(rows).fill(Number.NaN);
  return {
    kind: new Uint8Array(rows),
    segment: numbers(),
    person: numbers(),
    value: numbers(),
    days: numbers(),
    gainMm: numbers(),
    filmIntervalDays: numbers(),
    rescued: new Uint8Array(rows),
    because: new Array<Reason | undefined>(rows),
    marks: new Array<HealingMark | undefined>(rows),
  };
}

function write(columns: ClockColumns, { row, segment: one }: Case, definition: IndexDefinition, boneNamed: boolean): void {
  const reading = readIndex(one, definition, { boneNamed });
  const { person, segment } = one;
  columns.kind[row] = kinds[reading.reading];
  columns.segment[row] = segment;
  columns.person[row] = person;
  if (reading.reading === "excluded") {
    columns.because[row] = reading.because;
    return;
  }
  const { status, days, gainMm } = reading;
  columns.days[row] = days ?? Number.NaN;
  columns.gainMm[row] = gainMm ?? Number.NaN;
  if (reading.reading === "ended") return;
  const rescued = reading.reading === "measured" && reading.rescued;
  columns.value[row] = reading.value;
  columns.rescued[row] = Number(rescued);
  columns.filmIntervalDays[row] = (reading.reading === "measured" ? reading.filmIntervalDays : null) ?? Number.NaN;
  columns.marks[row] = { segment, person, status, value: reading.value, days: reading.days, gainMm, rescued };
}
