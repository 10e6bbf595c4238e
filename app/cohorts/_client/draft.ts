import type { CohortNode, GroupNode } from "@/lib/cohorts";
import type { PlainValue } from "./offered";

export type Verb = "is" | "between" | "at-least" | "at-most" | "recorded" | "not-recorded";

/** A sentence while it is written: what is half typed stands here as typed, and means nothing yet. */
export type DraftCondition = {
  readonly id: number;
  readonly kind: "condition";
  readonly field: string;
  readonly verb: Verb;
  readonly values: readonly PlainValue[];
  readonly from: string;
  readonly to: string;
};
export type Join = "all" | "any" | "none" | "not-all";
export type DraftGroup = { readonly id: number; readonly kind: "group"; readonly join: Join; readonly items: readonly Draft[] };
export type Draft = DraftCondition | DraftGroup;

/** Numbers sentences in their order, so that server and browser give them the same numbers. */
export function draftOf(tree: GroupNode): DraftGroup {
  let next = 0;
  const number = () => next++;
  const draft = (node: CohortNode): Draft =>
    node.node === "group" ? groupDraft(node, number(), node.items.map(draft)) : conditionDraft(node, number());
  return groupDraft(tree, number(), tree.items.map(draft));
}

function groupDraft({ join, negated }: GroupNode, id: number, items: readonly Draft[]): DraftGroup {
  return { id, kind: "group", join: negated ? (join === "any" ? "none" : "not-all") : join, items };
}

function conditionDraft({ field, part }: Extract<CohortNode, { node: "condition" }>, id: number): DraftCondition {
  const blank: DraftCondition = { id, kind: "condition", field, verb: "is", values: [], from: "", to: "" };
  if (Array.isArray(part)) return { ...blank, values: part };
  if ("missing" in part) return { ...blank, verb: part.missing ? "not-recorded" : "recorded" };
  const range = part as { readonly from?: number | undefined; readonly to?: number | undefined };
  const [from, to] = [range.from?.toString() ?? "", range.to?.toString() ?? ""];
  const verb = from !== "" && to !== "" ? "between" : from !== "" ? "at-least" : "at-most";
  return { ...blank, verb, from, to };
}

/** What the sentences mean so far. */
export function treeOfDraft({ join, items }: DraftGroup): GroupNode {
  return {
    node: "group",
    join: join === "any" || join === "none" ? "any" : "all",
    negated: join === "none" || join === "not-all",
    items: items.flatMap(nodesOf),
  };
}

function nodesOf(draft: Draft): readonly CohortNode[] {
  if (draft.kind === "group") return draft.items.length === 0 ? [] : [treeOfDraft(draft)];
  const part = partOf(draft);
  return draft.field === "" || part === null ? [] : [{ node: "condition", field: draft.field, part }];
}

function partOf({ verb, values, from, to }: DraftCondition) {
  if (verb === "recorded" || verb === "not-recorded") return { missing: verb === "not-recorded" };
  if (verb === "is") return values.length === 0 ? null : values;
  const low = verb === "at-most" ? null : numberOf(from);
  const high = verb === "at-least" ? null : numberOf(to);
  if (low === null && high === null) return null;
  return { ...(low === null ? {} : { from: low }), ...(high === null ? {} : { to: high }) };
}

/** A number as people type it, with a point or a comma. */
export function numberOf(text: string): number | null {
  const plain = text.trim().replace(",", ".").replace("−", "-");
  return /^-?\d+(\.\d+)?$/.test(plain) ? Number(plain) : null;
}
