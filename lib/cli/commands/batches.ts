import type { Batch } from "@/lib/registry";
import { parseWords, UsageError } from "../arguments";
import { type Command, done } from "../command";
import { withRegistry } from "../registry-folder";
import { tableText } from "../table-text";

export const batches: Command = {
  words: "batches",
  about: "what came in, oldest first",
  run: (args) =>
    withRegistry(async (registry) => {
      const { words } = parseWords(args, {});
      if (words.length > 0) throw new UsageError("batches takes no words");
      const held = await registry.batches();
      return done(
        held,
        held.length === 0 ? "Nothing has been brought in yet." : tableText(["batch", "kind", "at", "rows", "content"], held.map(rowOf)),
      );
    }),
};

function rowOf({ batch, kind, at, counts, contentHash }: Batch) {
  const rows = Object.values(counts).reduce((sum, n) => sum + n, 0);
  return [batch, kind, at, rows, contentHash.slice(0, 12)];
}
