import { result as ask } from "@/lib/answers";
import { textOfAnswer } from "../answer-text";
import { parseWords, Refusal, UsageError } from "../arguments";
import { type Command, done } from "../command";
import { withRegistry } from "../registry-folder";
import { withoutMarks } from "./measure";

export const result: Command = {
  words: "result STAMP",
  about: "the answer again that a result reference names",
  async run(args) {
    const { words } = parseWords(args, {});
    const stamp = words[0] ?? "";
    if (words.length !== 1 || !/^[0-9a-f]{12}$/.test(stamp))
      throw new UsageError("result requires a result reference: twelve characters of 0-9a-f");
    const answer = await withRegistry((registry) => ask(registry, stamp));
    if (answer === null) throw new Refusal("No question is kept under that result reference in this registry.");
    const version = answer.sameVersion ? "" : "\nThe reference comes from another version of the methods: numbers may differ.";
    return done({ ...withoutMarks(answer), sameVersion: answer.sameVersion }, textOfAnswer(answer) + version);
  },
};
