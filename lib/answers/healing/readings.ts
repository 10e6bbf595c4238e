import { fieldsNamed, type Where } from "@/lib/cohorts";
import type { IndexDefinition } from "@/lib/outcomes";
import type { Registry, State } from "@/lib/registry";
import { type Case, casesOf } from "../frames/cases";
import { answerCache } from "../question/cache";
import { fieldsOfSplit, type Group, splitBy } from "./groups";
import { clockReader, type Read } from "./read";

/** A segment on the day scale: healed on a day, not yet healed at its last film, or ended: it can't heal so any more. */
export type DayRow = {
  readonly person: number;
  readonly segment: number;
  readonly days: number;
  readonly healed: boolean;
  /** Healed, after further bone surgery. */
  readonly rescued: boolean;
  /** Of the healed: days from the last film that showed it unhealed to the first that showed it healed. `null`: not known. */
  readonly filmIntervalDays: number | null;
  readonly gainMm: number | null;
};
export type EndedRow = { readonly person: number; readonly segment: number; readonly days: number | null; readonly gainMm: number | null };
export type DayGroup = Group & {
  readonly rows: readonly DayRow[];
  readonly ended: readonly EndedRow[];
  readonly excluded: Readonly<Record<string, number>>;
};

const cached = answerCache<readonly DayGroup[]>((groups) => groups.reduce((sum, { rows }) => sum + rows.length, 0));

/** The groups of a split with their rows on the day scale, and what is left out by its reason. Lines and fits of one page ask for the same. */
export function dayGroups(
  registry: Registry,
  state: State,
  definition: IndexDefinition,
  asked: { readonly where: Where; readonly by: readonly string[] },
): Promise<readonly DayGroup[]> {
  const id = `${registry.folder} ${state.batch} ${state.erasures} ${JSON.stringify([definition, asked.where, asked.by])}`;
  return cached(id, () => readGroups(registry, state, definition, asked));
}

async function readGroups(
  registry: Registry,
  state: State,
  definition: IndexDefinition,
  { where, by }: { readonly where: Where; readonly by: readonly string[] },
): Promise<readonly DayGroup[]> {
  const split = fieldsOfSplit(by);
  const cases = await casesOf(registry, state, where, split);
  const boneNamed = split.includes("bone") || fieldsNamed(where).has("bone");
  const read = await clockReader(registry, state, definition, boneNamed);
  return splitBy(cases, by).map((group) => readDays(group, read));
}

function readDays(group: Group, read: (one: Case) => Read): DayGroup {
  const rows: DayRow[] = [];
  const excluded: Record<string, number> = {};
  const ended: EndedRow[] = [];
  for (const one of group.cases) {
    const reading = read(one);
    const { person, segment } = one.segment;
    if (reading.reading === "excluded") excluded[reading.because] = (excluded[reading.because] ?? 0) + 1;
    else if (reading.reading === "ended") ended.push({ person, segment, days: reading.days, gainMm: reading.gainMm });
    else {
      const healed = reading.reading === "measured";
      rows.push({
        person,
        segment,
        days: reading.days,
        healed,
        rescued: healed && reading.rescued,
        filmIntervalDays: healed ? reading.filmIntervalDays : null,
        gainMm: reading.gainMm,
      });
    }
  }
  return { ...group, rows, ended, excluded };
}
