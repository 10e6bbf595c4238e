import { fieldsNamed, type Where } from "@/lib/cohorts";
import type { IndexDefinition } from "@/lib/outcomes";
import type { Registry, State } from "@/lib/registry";
import { casesOf } from "../frames/cases";
import { answerCache } from "../question/cache";
import { knownGains } from "./columns";
import { excludedOf, middle, type ReadGroup, readGroup } from "./group";
import { fieldsOfSplit, type Group, splitBy } from "./groups";
import { type ClockColumns, clockReader, kinds } from "./read";

type Asked = { readonly where: Where; readonly by: readonly string[] };

/** The groups of a split as a clock read them. */
export type Readings = {
  readonly groups: readonly ReadGroup[];
  /** Of the whole cohort, so that groups are compared at one gain. */
  readonly medianGainMm: number | null;
};

const cached = answerCache<Readings>(({ groups }) => groups.reduce((sum, { cases }) => sum + cases.length, 0));

/** The groups of a split as a clock reads them. Summaries, lines and fits of one page ask for the same. */
export function readingsOf(registry: Registry, state: State, definition: IndexDefinition, asked: Asked): Promise<Readings> {
  const id = `${registry.folder} ${state.batch} ${state.erasures} ${JSON.stringify([definition, asked.where, asked.by])}`;
  return cached(id, async () => {
    const { groups: parted, clock } = await partedBy(registry, state, definition, asked);
    const groups = parted.map((group) => readGroup(group, clock));
    return { groups, medianGainMm: middle(groups.flatMap(({ columns }) => knownGains(columns))) };
  });
}

async function partedBy(registry: Registry, state: State, definition: IndexDefinition, { where, by }: Asked) {
  const split = fieldsOfSplit(by);
  const cases = await casesOf(registry, state, where, split);
  const boneNamed = split.includes("bone") || fieldsNamed(where).has("bone");
  const read = await clockReader(registry, state, definition, boneNamed);
  return { groups: splitBy(cases, by), clock: read(cases) };
}

/** A segment on the day scale: healed on a day, not yet healed at its last film, or ended: it can't heal so any more. */
export type DayRow = {
  readonly person: number;
  readonly days: number;
  readonly healed: boolean;
  /** Healed, after further bone surgery. */
  readonly rescued: boolean;
  /** Of the healed: days from the last film that showed it unhealed to the first that showed it healed. `null`: not known. */
  readonly filmIntervalDays: number | null;
  readonly gainMm: number | null;
};
export type EndedRow = { readonly person: number; readonly days: number | null; readonly gainMm: number | null };
export type DayGroup = Group & {
  readonly rows: readonly DayRow[];
  readonly ended: readonly EndedRow[];
  readonly excluded: Readonly<Record<string, number>>;
};

/** The groups of a split with their rows on the day scale in the order of the cases, and what is left out by its reason. */
export async function dayGroups(registry: Registry, state: State, definition: IndexDefinition, asked: Asked): Promise<readonly DayGroup[]> {
  const { groups, clock } = await partedBy(registry, state, definition, asked);
  return groups.map((group) => readDays(group, clock));
}

function readDays(group: Group, clock: ClockColumns): DayGroup {
  const rows: DayRow[] = [];
  const ended: EndedRow[] = [];
  const known = (number: number | undefined) => (number === undefined || Number.isNaN(number) ? null : number);
  for (const { row } of group.cases) {
    const kind = clock.kind[row];
    const [person, days, gainMm] = [clock.person[row] as number, known(clock.days[row]), known(clock.gainMm[row])];
    if (kind === kinds.ended) ended.push({ person, days, gainMm });
    else if (kind !== kinds.excluded && days !== null)
      rows.push({
        person,
        days,
        healed: kind === kinds.measured,
        rescued: clock.rescued[row] === 1,
        filmIntervalDays: known(clock.filmIntervalDays[row]),
        gainMm,
      });
  }
  return { ...group, rows, ended, excluded: excludedOf(group.cases, clock) };
}
