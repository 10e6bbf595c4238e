import type { FigureSource, GroupCounts, NoteForFigure } from "../figure/source";
import type { CountedOf } from "../say/shown-estimate";

/** How segments (or persons) stand at each window of follow-up, by group. */
export type FollowUpRecord = FigureSource & {
  readonly of?: CountedOf;
  /** The clock in words: `from surgery` unless told. */
  readonly clock?: string;
  readonly groups: readonly FollowUpGroup[];
};

export type FollowUpGroup = GroupCounts & {
  /** segments (or patients) = n + Σ excluded. */
  readonly n: number;
  readonly windows: readonly FollowUpWindowCounts[];
  readonly notes?: readonly NoteForFigure[];
};

/** The five add up to n. `due`: the window has closed, and it was not seen in it. */
export type FollowUpWindowCounts = {
  readonly label: string;
  readonly seen: number;
  readonly due: number;
  readonly lost: number;
  readonly dead: number;
  readonly notYetDue: number;
};

export const fates = ["seen", "due", "lost", "dead", "notYetDue"] as const;
export type Fate = (typeof fates)[number];

export const fateWords: Readonly<Record<Fate, string>> = {
  seen: "seen",
  due: "due, not seen",
  lost: "lost",
  dead: "dead",
  notYetDue: "not yet due",
};

/** @throws RangeError when a window does not add up to its group */
export function requireSums({ groups }: FollowUpRecord): void {
  for (const { label, n, windows } of groups)
    for (const window of windows) {
      const sum = fates.reduce((total, fate) => total + window[fate], 0);
      if (sum !== n) throw new RangeError(`requireSums requires ${n} in each window of ${label}, received ${sum}`);
    }
}

/** Those who could be expected, the dead and the not yet due apart: the seen, those due and the lost. */
export function closedIn({ seen, due, lost }: FollowUpWindowCounts): number {
  return seen + due + lost;
}
