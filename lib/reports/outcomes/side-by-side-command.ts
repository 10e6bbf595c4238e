import { canBeAdjusted } from "@/lib/answers";
import { commandWords } from "../words/command-words";
import type { SideBySideQuestion } from "./side-by-side-question";

/** A single outcome that can't be adjusted is asked for as it stands. */
const isAdjusted = (measure: string) => canBeAdjusted(measure) || measure.startsWith("own-");

/** The family of outcomes at the command line: one comparison, whose p values go by Holm as here. */
export function commandOf({ between, measures, adjust, test, scheme, withoutPinSites, asOf }: SideBySideQuestion): string {
  const counted = measures.some((measure) => measure.startsWith("complication"));
  const more = {
    adjust: adjust.length === 0 || !measures.some(isAdjusted) ? null : adjust.map(({ field }) => field).join(","),
    test: test ? "" : null,
    scheme: counted ? scheme : null,
    "without-pin-sites": withoutPinSites && counted ? "" : null,
  };
  const verb = `compare ${measures.join(",")}`;
  if ("cohorts" in between) {
    const cohorts = between.cohorts.map(({ where }) => JSON.stringify(where)).join(",");
    return commandWords(verb, { where: {}, by: [], asOf }, { cohorts: `'${cohorts.replaceAll("'", "'\\''")}'`, ...more });
  }
  const values = between.values.map(String).join(",");
  return commandWords(verb, { where: between.where, by: [], asOf }, { between: `${between.field}=${values}`, ...more });
}
