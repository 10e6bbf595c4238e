import { completeness as ask } from "@/lib/answers";
import { parseWords, textOf, wholeNumber } from "../arguments";
import { cohortNamed } from "../cohort-words";
import { type Command, done } from "../command";
import { withRegistry } from "../registry-folder";
import { tableText } from "../table-text";

export const completeness: Command = {
  words: "completeness [--cohort NAME|JSON] [--as-of BATCH]",
  about: "how complete the records are, item by item, audit year by audit year",
  run: (args) =>
    withRegistry(async (registry) => {
      const { values } = parseWords(args, { cohort: { type: "string" }, "as-of": { type: "string" } });
      const asOf = wholeNumber(values, "as-of");
      const where = await cohortNamed(registry, textOf(values, "cohort"));
      const answer = await ask(registry, { where, ...(asOf === undefined ? {} : { asOf }) });
      const rows = answer.items.map(({ label, group, recorded }) => [
        group,
        label,
        ...recorded.map((n, i) => `${n}/${answer.segments[i]}`),
      ]);
      return done(answer, tableText(["when", "item", ...answer.years.map(String)], rows));
    }),
};
