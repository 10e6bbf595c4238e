import { type Between, type CohortGroup, cohortGroups } from "@/lib/answers";
import { parseWhere } from "@/lib/cohorts";
import type { registry } from "../../_data/registry";
import type { PairQuestion } from "./_question";

type Registry = Awaited<ReturnType<typeof registry>>;
export type Saved = { readonly name: string; readonly where: string };
export type Groups = {
  /** The groups of the field that occur in the cohort. */
  readonly occurring: readonly CohortGroup[];
  readonly saved: readonly Saved[];
  /** `null`: there are not two groups to compare. */
  readonly between: Between | null;
  /** Every value of the field that occurs; *not recorded* is none. */
  readonly values: readonly (string | number | boolean)[];
  readonly a: string;
  readonly b: string;
  /** The address named a group that doesn't occur here. */
  readonly replaced: boolean;
};

/** The two groups that the address means: those named, or the two largest. */
export async function groupsOf(from: Registry, question: PairQuestion): Promise<Groups> {
  const saved = await from.cohorts();
  const { where, field, asOf } = question;
  const occurring = await cohortGroups(from, { where, by: [field], ...(asOf === null ? {} : { asOf }) });
  const values = occurring.flatMap(({ key }) => key[field] ?? []);
  const own = { occurring, saved, values };
  return question.between === "cohorts" ? { ...own, ...savedPair(saved, question) } : { ...own, ...valuePair(occurring, question) };
}

function valuePair(occurring: readonly CohortGroup[], { where, field, a, b }: PairQuestion) {
  const held = (group: CohortGroup) => group.key[field] ?? null;
  const known = occurring.filter((group) => held(group) !== null);
  const byName = (text: string | null) => occurring.find((group) => String(held(group)) === text);
  const largest = [...known].sort((x, y) => y.segments - x.segments);
  const first = byName(a) ?? largest.find((group) => group !== byName(b));
  const second = [byName(b), ...largest].find((group) => group !== undefined && group !== first);
  const replaced = (a !== null && first !== byName(a)) || (b !== null && second !== byName(b));
  const between: Between | null = first && second ? { field, values: [held(first), held(second)], where } : null;
  return { between, a: first ? String(held(first)) : "", b: second ? String(held(second)) : "", replaced };
}

function savedPair(saved: readonly Saved[], { where, first, second }: PairQuestion) {
  const one = saved.find(({ name }) => name === first) ?? saved.find(({ name }) => name !== second);
  const two = saved.find(({ name }) => name === second && name !== one?.name) ?? saved.find(({ name }) => name !== one?.name);
  const replaced = (first !== null && one?.name !== first) || (second !== null && two?.name !== second);
  if (!one || !two) return { between: null, a: one?.name ?? "", b: "", replaced };
  const named = ({ name, where: text }: Saved) => {
    const own = parseWhere(text);
    return { name, where: Object.keys(where).length === 0 ? own : { all: [where, own] } };
  };
  return { between: { cohorts: [named(one), named(two)] } as const, a: one.name, b: two.name, replaced };
}
