import { parseWords, Refusal, UsageError } from "../arguments";
import { type Command, done } from "../command";
import { now } from "../now";
import { withRegistry } from "../registry-folder";

export const undo: Command = {
  words: "undo BATCH",
  about: "put back what a batch changed, as a new batch; undoing the undo is redo",
  run: (args) =>
    withRegistry(async (registry) => {
      const { words } = parseWords(args, {});
      if (words.length !== 1 || !/^\d{1,9}$/.test(words[0] ?? "")) throw new UsageError("undo requires the number of one batch");
      const batch = Number(words[0]);
      const { batch: newest } = await registry.state();
      if (batch < 1 || batch > newest) throw new UsageError(`undo requires a batch from 1 to ${newest}, received ${batch}`);
      const undone = await registry.undo(batch, { at: now() });
      if ("blockedBy" in undone)
        throw new Refusal(
          `Batch ${batch} can't be undone: later batches changed the same rows (${undone.blockedBy.join(", ")}). Undo those first.`,
          undone,
        );
      return done(
        undone,
        `Batch ${undone.batch} puts back what batch ${batch} changed. It stands in the list of batches for everyone to see, and can be undone.`,
      );
    }),
};
