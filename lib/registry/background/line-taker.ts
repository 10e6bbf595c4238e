import { type Commit, collectCommit } from "@/lib/intake";

/** Takes the text of a commit in pieces of any size, line by line, each checked on arrival. */
export type LineTaker = { readonly take: (text: string) => void; readonly finish: () => Commit };

/** @throws WireError for a line that may not come in, and for a commit that breaks off */
export function lineTaker(): LineTaker {
  const collector = collectCommit();
  let rest = "";
  return {
    take: (text) => {
      const lines = (rest + text).split("\n");
      rest = lines.pop() ?? "";
      for (const line of lines) collector.take(line);
    },
    finish: () => {
      if (rest !== "") collector.take(rest);
      return collector.finish();
    },
  };
}
