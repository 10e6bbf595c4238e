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

/** Conditions on different fields stand in one object; several of a field, or several groups of a kind, stand in a list. */
function allOf(parts: readonly Where[]): Where {
  const times = new Map<string, number>();
  for (const part of parts) for (const key of Object.keys(part)) times.set(key, (times.get(key) ?? 0) + 1);
  const isAlone = (part: Where) => Object.keys(part).every((key) => key !== "all" && times.get(key) === 1);
  const merged: Where = Object.assign({}, ...parts.filter(isAlone));
  const rest = parts.filter((part) => !isAlone(part));
  if (rest.length === 0) return merged;
  const [only] = rest;
  return only && parts.length === 1 ? only : { ...merged, all: rest };
}
