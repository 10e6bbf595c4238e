import { createHash } from "node:crypto";
import type { State } from "@/lib/registry";

/** Everything that an answer depends on. Equal questions of one state give equal answers, so the stamp is the cache's key too. */
export type Question = {
  readonly cohort: unknown;
  readonly measure: string;
  readonly by: readonly string[];
  readonly method: string;
  readonly options: Readonly<Record<string, string | number | boolean | null>>;
  readonly seed: number | null;
  readonly version: string;
  readonly state: State;
};

/** The result reference: the first 12 characters of SHA-256 over the canonical question. */
export function stampOf(question: Question): string {
  return createHash("sha256").update(canonicalQuestion(question)).digest("hex").slice(0, 12);
}

/** The question with its keys in one order, however it was put together. */
export function canonicalQuestion({ cohort, measure, by, method, options, seed, version, state }: Question): string {
  const sorted = Object.fromEntries(Object.entries(options).sort(([a], [b]) => (a < b ? -1 : 1)));
  return JSON.stringify({
    cohort,
    measure,
    by,
    method,
    options: sorted,
    seed,
    version,
    state: { batch: state.batch, erasures: state.erasures },
  });
}
