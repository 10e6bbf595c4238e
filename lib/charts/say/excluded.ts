import { excludedIn, type GroupCounts } from "../figure/source";
import { counted, countedIn, grouped, listed } from "./numbers";
import type { CountedOf } from "./shown-estimate";

/** A reason code as words: `gain-under-10mm` → `gain under 10 mm`. */
export function reasonWords(code: string): string {
  return code.replaceAll("-", " ").replace(/(\d)(mm|cm)\b/g, "$1 $2");
}

/** Left out by reason, in the record's order: `2 healing date missing and 1 no gain`. */
export function reasonsText({ excluded }: Pick<GroupCounts, "excluded">): string {
  const parts = Object.entries(excluded).filter(([, n]) => n > 0);
  return listed(parts.map(([reason, n]) => `${grouped(n)} ${reasonWords(reason)}`));
}

/** `43 segments in 30 patients: 41 measured, 2 left out (1 no gain and 1 no visits)`; the parts add up. */
export function countsText(group: GroupCounts & { readonly n: number }, of: CountedOf = "segment", done = "measured"): string {
  const all = of === "segment" ? countedIn(group.segments, group.patients) : counted(group.patients, "patient");
  if (group.segments === 0 && group.patients === 0) return `no ${of === "segment" ? "segment" : "patient"} in this group`;
  const out = excludedIn(group);
  return `${all}: ${grouped(group.n)} ${done}${out === 0 ? "" : `, ${grouped(out)} left out (${reasonsText(group)})`}`;
}

/** All groups together; patients are not added up, since one may stand in several groups. */
export function totalText(groups: readonly (GroupCounts & { readonly n: number })[], of: CountedOf = "segment", done = "measured"): string {
  const [only] = groups;
  if (only && groups.length === 1) return countsText(only, of, done);
  const sum = (pick: (group: GroupCounts & { readonly n: number }) => number) => groups.reduce((total, group) => total + pick(group), 0);
  const all =
    of === "segment"
      ? counted(
          sum((group) => group.segments),
          "segment",
        )
      : counted(
          sum((group) => group.patients),
          "patient",
        );
  const out = sum(excludedIn);
  return `${all} in ${counted(groups.length, "group")}: ${grouped(sum((group) => group.n))} ${done}${out === 0 ? "" : `, ${grouped(out)} left out`}`;
}
