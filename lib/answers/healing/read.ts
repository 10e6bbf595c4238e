import { type IndexDefinition, type Reading, readIndex } from "@/lib/outcomes";
import type { Registry, State } from "@/lib/registry";
import { type BaseCase, baseCases } from "../frames/base-cases";
import type { Case } from "../frames/cases";
import type { HealingMark } from "../types";

/** What a clock read on a segment, and whose it is. */
type Whose = { readonly person: number; readonly segment: number; readonly mark: HealingMark };
export type Measured = Extract<Reading, { reading: "measured" }> & Whose;
export type Censored = Extract<Reading, { reading: "censored" }> & Whose;
export type Read = Measured | Censored | Exclude<Reading, { reading: "measured" | "censored" }>;

const clocksKept = 3;
/** Readings of a state's segments by clock and row: splits and places differ, readings don't. */
const kept = new WeakMap<readonly BaseCase[], Map<string, Read[]>>();

/** Reads a clock on the cases of a state, each once. @param boneNamed the cohort or the split names the bone */
export async function clockReader(
  registry: Registry,
  state: State,
  definition: IndexDefinition,
  boneNamed: boolean,
): Promise<(one: Case) => Read> {
  const base = await baseCases(registry, state);
  const clocks = kept.get(base) ?? new Map<string, Read[]>();
  kept.set(base, clocks);
  const id = JSON.stringify([definition, boneNamed]);
  const reads = clocks.get(id) ?? new Array<Read>(base.length);
  clocks.delete(id);
  clocks.set(id, reads);
  const oldest = clocks.keys().next().value;
  if (clocks.size > clocksKept && oldest !== undefined) clocks.delete(oldest);
  return ({ row, segment }) => {
    const held = reads[row];
    if (held) return held;
    const reading = readIndex(segment, definition, { boneNamed });
    const read = reading.reading === "measured" || reading.reading === "censored" ? ofSegment(reading, segment) : reading;
    reads[row] = read;
    return read;
  };
}

function ofSegment(
  reading: Extract<Reading, { reading: "measured" | "censored" }>,
  { person, segment }: Case["segment"],
): Measured | Censored {
  const { status, value, days, gainMm } = reading;
  const rescued = reading.reading === "measured" && reading.rescued;
  return { ...reading, person, segment, mark: { segment, person, status, value, days, gainMm, rescued } };
}
