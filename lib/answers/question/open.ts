import { canonicalWhere, type Where } from "@/lib/cohorts";
import type { Registry, State } from "@/lib/registry";
import { dataTo } from "../frames/data-to";
import { keepQuestion } from "./keep";
import { type Question, stampOf } from "./stamp";
import { stateAsOf } from "./state";
import { version } from "./version";

export type Asking = {
  readonly measure: string;
  readonly by?: readonly string[] | undefined;
  readonly where?: Where | undefined;
  /** Of two cohorts beside each other, instead of `where`. */
  readonly cohort?: unknown;
  readonly asOf?: number | undefined;
  readonly method: string;
  readonly options?: Question["options"];
  readonly seed?: number | null;
};

/** What stands at the head of every answer: its stamp, and everything that the stamp is made of. */
export type Head = {
  readonly batch: number;
  readonly state: State;
  readonly stamp: string;
  readonly cohort: unknown;
  readonly method: string;
  readonly by: readonly string[];
  readonly dataTo: string | null;
};

/** Opens a question: takes the state, stamps and keeps the question. @throws RangeError for a batch that isn't there */
export async function openQuestion(registry: Registry, asking: Asking): Promise<Head> {
  const { measure, by = [], where = {}, method, options = {}, seed = null } = asking;
  const state = await stateAsOf(registry, asking.asOf);
  const cohort: unknown = asking.cohort ?? JSON.parse(canonicalWhere(where));
  const question: Question = { cohort, measure, by, method, options, seed, version, state };
  const stamp = stampOf(question);
  await keepQuestion(registry, stamp, question);
  return { batch: state.batch, state, stamp, cohort, method, by, dataTo: await dataTo(registry, state) };
}
