import { type HealingStatus, healingStatuses } from "@/lib/codebook";
import { healingStatus } from "@/lib/outcomes";
import type { Batch, Counts, Registry, State } from "@/lib/registry";
import { type Case, casesOf } from "../frames/cases";
import { dataTo } from "../frames/data-to";
import { answerCache } from "../question/cache";

/** How the registry stands: what Today shows. */
export type TodayAnswer = {
  readonly batch: number;
  readonly dataTo: string | null;
  readonly units: readonly string[];
  readonly patients: number;
  readonly segments: number;
  readonly visits: number;
  readonly events: number;
  /** Segments by healing status, in the order in which the statuses are asked. */
  readonly statuses: readonly { readonly status: HealingStatus; readonly segments: number }[];
  /** Rows held that wait for the row of their person or segment: none of the counts above has them. */
  readonly waiting: Counts;
  /** Newest first. */
  readonly batches: readonly Batch[];
  /** Work for the clerk: each kind with its segments or persons; a case's page goes by its person's entity. */
  readonly work: readonly Work[];
};
export type Work = {
  readonly kind: "healing-date-missing" | "events-not-collected" | "permitted-use-not-recorded";
  readonly count: number;
  readonly persons: readonly number[];
};

const batchesShown = 5;
const personsListed = 200;

const cached = answerCache<TodayAnswer>();

/** Worked out once a state: every page bears a line of it. */
export async function today(registry: Registry): Promise<TodayAnswer> {
  const state = await registry.state();
  return cached(`${registry.folder} ${state.batch} ${state.erasures}`, () => standingOf(registry, state));
}

async function standingOf(registry: Registry, state: State): Promise<TodayAnswer> {
  const cases = await casesOf(registry, state, {}, ["eventsLookedFor", "permittedUse", "unit"]);
  const statuses = cases.map(({ segment }) => healingStatus(segment));
  const missing = cases.filter((_, i) => statuses[i] === "healing-date-missing");
  const notCollected = cases.filter(({ look }) => (look("eventsLookedFor") ?? "not-collected") === "not-collected");
  const noUse = cases.filter(({ look }) => look("permittedUse") === null);
  return {
    batch: state.batch,
    dataTo: await dataTo(registry, state),
    units: [...new Set(cases.map(({ look }) => String(look("unit"))))].sort(),
    patients: personsOf(cases).length,
    segments: cases.length,
    visits: (await registry.frameAsOf(state, "visit", [])).length,
    events: (await registry.frameAsOf(state, "event", [])).length,
    statuses: healingStatuses.map((status) => ({ status, segments: statuses.filter((one) => one === status).length })),
    waiting: await registry.waiting(state.batch),
    batches: (await registry.batches()).slice(-batchesShown).reverse(),
    work: [
      { kind: "healing-date-missing" as const, count: missing.length, persons: personsOf(missing).slice(0, personsListed) },
      { kind: "events-not-collected" as const, count: notCollected.length, persons: personsOf(notCollected).slice(0, personsListed) },
      { kind: "permitted-use-not-recorded" as const, count: personsOf(noUse).length, persons: personsOf(noUse).slice(0, personsListed) },
    ].filter(({ count }) => count > 0),
  };
}

function personsOf(cases: readonly Case[]): number[] {
  return [...new Set(cases.map(({ segment }) => segment.person))];
}
