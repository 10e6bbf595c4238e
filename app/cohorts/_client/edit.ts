import type { Draft, DraftCondition, DraftGroup, Join } from "./draft";

export type Edit =
  | { readonly edit: "reset"; readonly to: DraftGroup }
  | { readonly edit: "change"; readonly id: number; readonly by: Partial<Omit<DraftCondition, "id" | "kind">> }
  | { readonly edit: "join"; readonly id: number; readonly join: Join }
  | { readonly edit: "add-condition"; readonly into: number; readonly field?: string }
  | { readonly edit: "add-group"; readonly into: number; readonly join: Join }
  | { readonly edit: "remove"; readonly id: number };

/** The sentences after an edit. */
export function edited(root: DraftGroup, edit: Edit): DraftGroup {
  switch (edit.edit) {
    case "reset":
      return edit.to;
    case "change":
      return mapGroup(root, (draft) => (draft.kind === "condition" && draft.id === edit.id ? { ...draft, ...edit.by } : draft));
    case "join":
      return mapGroup(root, (draft) => (draft.kind === "group" && draft.id === edit.id ? { ...draft, join: edit.join } : draft));
    case "add-condition":
      return into(root, edit.into, blank(nextId(root), edit.field ?? ""));
    case "add-group": {
      const id = nextId(root);
      return into(root, edit.into, { id, kind: "group", join: edit.join, items: [blank(id + 1, "")] });
    }
    case "remove":
      return without(root, edit.id);
  }
}

function blank(id: number, field: string): DraftCondition {
  return { id, kind: "condition", field, verb: "is", values: [], from: "", to: "" };
}

function nextId(draft: Draft): number {
  return draft.kind === "group" ? Math.max(draft.id + 1, ...draft.items.map(nextId)) : draft.id + 1;
}

function mapGroup(group: DraftGroup, change: (draft: Draft) => Draft): DraftGroup {
  const walked = { ...group, items: group.items.map((item) => (item.kind === "group" ? mapGroup(item, change) : change(item))) };
  return change(walked) as DraftGroup;
}

function into(root: DraftGroup, id: number, item: Draft): DraftGroup {
  return mapGroup(root, (draft) => (draft.kind === "group" && draft.id === id ? { ...draft, items: [...draft.items, item] } : draft));
}

function without(group: DraftGroup, id: number): DraftGroup {
  const items = group.items.filter((item) => item.id !== id);
  return { ...group, items: items.map((item) => (item.kind === "group" ? without(item, id) : item)) };
}
