import { counted } from "@/lib/charts";

const mostNamed = 3;

type Placed<Group> = {
  /** What is said of a group, without its name. */
  readonly text: (group: Group) => string;
  /** By what groups are ranked when they are too many to name; `null`: not ranked. */
  readonly rank: (group: Group) => number | null;
  /** Of the ends: `the lowest mean`, `the highest`. */
  readonly lowest: string;
  readonly highest: string;
};

/** What is said of groups: each by its name while they are few, of many only the two ends. */
export function byGroup<Group extends { readonly label: string }>(groups: readonly Group[], said: Placed<Group>): string {
  const [only] = groups;
  if (only && groups.length === 1) return said.text(only);
  if (groups.length <= mostNamed) return groups.map((group) => `${group.label} ${said.text(group)}`).join("; ");
  const ranked = groups.flatMap((group) => {
    const rank = said.rank(group);
    return rank === null ? [] : [{ group, rank }];
  });
  ranked.sort((a, b) => a.rank - b.rank);
  const [first, last] = [ranked[0], ranked.at(-1)];
  if (!first || !last) return `${counted(groups.length, "group")}, none with patients enough for an interval`;
  const named = ({ group }: { readonly group: Group }) => `${group.label}, ${said.text(group)}`;
  if (first === last) return `${counted(groups.length, "group")}, one with patients enough for an interval: ${named(first)}`;
  const all =
    ranked.length === groups.length
      ? `of ${groups.length} groups`
      : `of ${groups.length} groups, ${ranked.length} with patients enough for an interval`;
  return `${all}, ${said.lowest} is that of ${named(first)}; ${said.highest} that of ${named(last)}`;
}
