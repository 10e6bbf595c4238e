import type { Registry } from "@/lib/registry";
import { type Head, openQuestion } from "../question/open";
import { type Balance, balanceOf, caseMixFields } from "./balance";
import { type SideAnswer, sideAnswer } from "./compare";
import { type Between, cohortsOf, sidesOf } from "./sides";

export type CaseMixAnswer = Head & {
  readonly measure: "case-mix";
  readonly definition: { readonly title: string; readonly sentence: string };
  readonly sides: readonly [SideAnswer, SideAnswer];
  readonly balance: readonly Balance[];
};

/**
 * How unlike two groups were to begin with.
 * @throws RangeError when a segment stands in both groups
 */
export async function caseMix(
  registry: Registry,
  { between, asOf }: { readonly between: Between; readonly asOf?: number },
): Promise<CaseMixAnswer> {
  const head = await openQuestion(registry, {
    cohort: cohortsOf(between),
    by: "cohorts" in between ? [] : [between.field],
    ...(asOf === undefined ? {} : { asOf }),
    measure: "case-mix",
    method: "standardised difference, over what is recorded; fields of the person count each person once",
    options: "cohorts" in between ? {} : { values: between.values.join(",") },
  });
  const sides = await sidesOf(registry, head.state, between, caseMixFields);
  return {
    ...head,
    measure: "case-mix",
    definition: { title: "Case mix", sentence: "difference in the field’s own spread, first group less second; of codes without a sign" },
    sides: [sideAnswer(sides[0]), sideAnswer(sides[1])],
    balance: balanceOf(sides[0].cases, sides[1].cases),
  };
}
