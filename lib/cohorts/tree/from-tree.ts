import type { Where } from "../where";
import type { CohortNode, GroupNode } from "./node";

/**
 * The cohort that the sentences mean. A group without a sentence says nothing yet, and leaves nobody out.
 * @example whereOf({ node: "group", join: "all", negated: false, items: [{ node: "condition", field: "bone", part: ["femur"] }] }) // => { bone: ["femur"] }
 */
export function whereOf(tree: GroupNode): Where {
  return whereOfNode(tree) ?? {};
}

/** `null`: the sentence says nothing. */
function whereOfNode(node: CohortNode): Where | null {
  if (node.node === "condition") return { [node.field]: node.part };
  const parts = node.items.map(whereOfNode).filter((part) => part !== null);
  if (parts.length === 0) return null;
  const joined = node.join === "any" ? anyOf(parts) : allOf(parts);
  return node.negated ? { not: joined } : joined;
}

function anyOf(parts: readonly Where[]): Where {
  const [only] = parts;
  return only && parts.length === 1 ? only : { any: parts };
}

/** What must hold together, one by one. */
function conjunctsOf(where: Where): readonly Where[] {
  return Object.entries(where).flatMap(([key, part]) =>
    key === "all" ? (part as readonly Where[]).flatMap(conjunctsOf) : [{ [key]: part } as Where],
  );
}

/** Conditions on different fields stand in one object; several of a field, or several groups of a kind, stand in a list. */
function allOf(wholes: readonly Where[]): Where {
  const parts = wholes.flatMap(conjunctsOf);
  const keyOf = (part: Where) => Object.keys(part)[0] as string;
  const times = new Map<string, number>();
  for (const part of parts) times.set(keyOf(part), (times.get(keyOf(part)) ?? 0) + 1);
  const isAlone = (part: Where) => times.get(keyOf(part)) === 1;
  const merged: Where = Object.assign({}, ...parts.filter(isAlone));
  const rest = parts.filter((part) => !isAlone(part));
  return rest.length === 0 ? merged : { ...merged, all: rest };
}
