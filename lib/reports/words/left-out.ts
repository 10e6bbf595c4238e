import { reasonsText } from "@/lib/charts";
import type { LeftOut } from "../told/told";

type Counted = { readonly label: string; readonly excluded: Readonly<Record<string, number>> };

/** What was left out of each group, by reason; groups of which nothing was left out are not named. */
export function leftOutOf(groups: readonly Counted[]): readonly LeftOut[] {
  return groups.flatMap(({ label, excluded }) => {
    const text = reasonsText({ excluded });
    return text === "" ? [] : [{ label, text }];
  });
}
