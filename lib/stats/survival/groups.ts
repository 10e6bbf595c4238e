import { requireSameLength } from "../require";

export type GroupLabels = readonly (string | number)[];

/** Groups in the order of their labels (numbers by size, texts by code unit), so that an answer doesn't depend on the order of the rows. */
export interface Groups {
  readonly labels: readonly (string | number)[];
  readonly code: Int32Array;
}

/** @throws RangeError when there are not as many labels as rows, or fewer than `least` different ones */
export function groupsOf(caller: string, group: GroupLabels, rows: number, least = 2): Groups {
  requireSameLength(caller, "times", rows, "group", group.length);
  const labels = [...new Set(group)].sort(byLabel);
  if (labels.length < least) throw new RangeError(`${caller} requires at least ${least} groups, received ${labels.length}`);
  const place = new Map(labels.map((label, i) => [label, i]));
  return { labels, code: Int32Array.from(group, (label) => place.get(label) as number) };
}

function byLabel(a: string | number, b: string | number): number {
  if (typeof a === typeof b) return a < b ? -1 : 1;
  return typeof a === "number" ? -1 : 1;
}
