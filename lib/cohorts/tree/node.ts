import type { Condition } from "../where";

/** One sentence of a cohort: a field, and what must hold of it. */
export type ConditionNode = { readonly node: "condition"; readonly field: string; readonly part: Condition };
/** Several sentences of which all, or any, must hold; or, negated, must not. */
export type GroupNode = {
  readonly node: "group";
  readonly join: "all" | "any";
  readonly negated: boolean;
  readonly items: readonly CohortNode[];
};
/** A cohort as it is edited: sentences in the order in which they were written, and groups of them. */
export type CohortNode = ConditionNode | GroupNode;
