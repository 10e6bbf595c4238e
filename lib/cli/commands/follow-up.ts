import { followUp as ask, type FollowUpAnswer } from "@/lib/answers";
import { parseWords, textOf, UsageError, wholeNumber } from "../arguments";
import { cohortNamed, fieldsOfSplit } from "../cohort-words";
import { type Command, done } from "../command";
import { withRegistry } from "../registry-folder";
import { tableText } from "../table-text";

const options = { by: { type: "string" }, cohort: { type: "string" }, "as-of": { type: "string" } } as const;

export const followUp: Command = {
  words: "follow-up [--by FIELD,…] [--cohort NAME|JSON] [--as-of BATCH]",
  about: "seen, due, not yet due, dead and lost at each window; how complete follow-up is",
  run: (args) =>
    withRegistry(async (registry) => {
      const { values, words } = parseWords(args, options);
      if (words.length > 0) throw new UsageError("follow-up takes no words");
      const asOf = wholeNumber(values, "as-of");
      const answer = await ask(registry, {
        by: fieldsOfSplit(textOf(values, "by")),
        where: await cohortNamed(registry, textOf(values, "cohort")),
        ...(asOf === undefined ? {} : { asOf }),
      });
      return done(answer, textOfFollowUp(answer));
    }),
};

function textOfFollowUp(answer: FollowUpAnswer): string {
  const rows = answer.groups.flatMap((group) =>
    group.windows.map(({ label, counts }) => [
      group.label,
      label,
      counts.seen,
      counts.due,
      counts["not-yet-due"],
      counts.dead,
      counts.lost,
    ]),
  );
  const completeness = answer.groups.map(({ label, completeness: whole }) =>
    whole
      ? `${label}: ${(whole.share * 100).toFixed(1)} % of potential person-time observed.`
      : `${label}: nobody could have been followed.`,
  );
  return [
    tableText(["group", "window", "seen", "due", "not yet due", "dead", "lost"], rows),
    "",
    ...completeness,
    answer.caution,
    `Result reference ${answer.stamp}, batch ${answer.batch}.`,
  ].join("\n");
}
