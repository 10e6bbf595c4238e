import { text as textFrom } from "node:stream/consumers";
import { listMethods, runMethod } from "@/lib/stats";
import { parseWords, UsageError } from "../arguments";
import { type Command, done } from "../command";
import { tableText } from "../table-text";

export const stats: Command = {
  words: "stats METHOD < input.json | stats --list",
  about: "a method of the statistics room on plain JSON, for checking by hand",
  async run(args) {
    const { values, words } = parseWords(args, { list: { type: "boolean" } });
    if (values.list) {
      const list = listMethods();
      return done(
        list,
        tableText(
          ["method", "what it answers"],
          list.map(({ id, title }) => [id, title]),
        ),
      );
    }
    const id = words[0];
    if (words.length !== 1 || id === undefined) throw new UsageError("stats requires one method, or --list");
    const answer = asked(id, inputFrom(await textFrom(process.stdin)));
    return done(answer, JSON.stringify(answer, null, 2));
  },
};

function inputFrom(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    throw new UsageError("stats requires the input as JSON on standard input, received something else");
  }
}

/** What a method refuses is a wrong call: its message says what it requires. */
function asked(id: string, input: unknown): unknown {
  try {
    return runMethod(id, input);
  } catch (error) {
    if (error instanceof RangeError || error instanceof TypeError) throw new UsageError(error.message);
    throw error;
  }
}
