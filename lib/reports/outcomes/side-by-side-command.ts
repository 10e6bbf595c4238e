import { canBeAdjusted } from "@/lib/answers";
import { commandWords } from "../words/command-words";
import type { SideBySideQuestion } from "./side-by-side-question";

/** The comparison of one outcome at the command line. */
export function commandOf(measure: string, { between, adjust, test, scheme, asOf }: SideBySideQuestion): string {
  const fields = adjust.map(({ field }) => field);
  const more = {
    adjust: fields.length === 0 || !canBeAdjusted(measure) ? null : fields.join(","),
    test: test ? "" : null,
    scheme: scheme !== null && measure.startsWith("complication") ? scheme : null,
  };
  if ("cohorts" in between) {
    const cohorts = between.cohorts.map(({ where }) => JSON.stringify(where)).join(",");
    return commandWords(`compare ${measure}`, { where: {}, by: [], asOf }, { cohorts: `'${cohorts.replaceAll("'", "'\\''")}'`, ...more });
  }
  const values = between.values.map(String).join(",");
  return commandWords(`compare ${measure}`, { where: between.where, by: [], asOf }, { between: `${between.field}=${values}`, ...more });
}
