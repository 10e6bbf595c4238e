import { parseWords, Refusal, UsageError } from "../arguments";
import { type Command, done } from "../command";
import { now } from "../now";
import { withRegistry } from "../registry-folder";

export const part: Command = {
  words: "part CASE",
  about: "give a number that was joined to another patient its own case again, with all that came under it",
  run: (args) =>
    withRegistry(async (registry) => {
      const { words } = parseWords(args, {});
      if (words.length !== 1 || !/^\d{1,9}$/.test(words[0] ?? ""))
        throw new UsageError("part requires the number that the joined case had");
      const person = Number(words[0]);
      if (!(await registry.joins()).some((join) => join.person.entity === person))
        throw new Refusal(`No case ${person} is joined to another.`, { refused: "not joined" });
      const { batch, contentHash } = await registry.part({ person, at: now() });
      return done({ batch, contentHash }, `Case ${person} is a case of its own again from batch ${batch} on. Content ${contentHash}.`);
    }),
};
