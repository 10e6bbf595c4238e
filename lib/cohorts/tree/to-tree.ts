import type { Condition, Where } from "../where";
import type { CohortNode, GroupNode } from "./node";

/** A cohort as sentences: conditions one below the other, *any*, *all* and *not* as groups of them. */
export function treeOf(where: Where): GroupNode {
  return { node: "group", join: "all", negated: false, items: itemsOf(where) };
}

function itemsOf(where: Where): readonly CohortNode[] {
  return Object.entries(where).flatMap(([key, part]): readonly CohortNode[] => {
    if (part === undefined) return [];
    if (key === "any") return [group("any", (part as readonly Where[]).map(one))];
    // sentences that must all hold anyway need no group of their own
    if (key === "all") return (part as readonly Where[]).flatMap(itemsOf);
    if (key === "not") return [negated(part as Where)];
    return [{ node: "condition", field: key, part: part as Condition }];
  });
}

function group(join: GroupNode["join"], items: readonly CohortNode[]): GroupNode {
  return { node: "group", join, negated: false, items };
}

/** A cohort inside a list: a single sentence as it stands, several as a group. */
function one(where: Where): CohortNode {
  const items = itemsOf(where);
  const [only] = items;
  return only && items.length === 1 ? only : group("all", items);
}

function negated(where: Where): GroupNode {
  const inner = one(where);
  // of a single sentence *none of these* says what is meant
  return inner.node === "group" && !inner.negated ? { ...inner, negated: true } : { ...group("any", [inner]), negated: true };
}
