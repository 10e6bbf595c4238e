import { result as ask, comparedAgain, version } from "@/lib/answers";
import { tellAgain } from "@/lib/reports";
import { textOfAnswer } from "../answer-text";
import { parseWords, Refusal, UsageError } from "../arguments";
import { type Answer, type Command, done } from "../command";
import { textOfCompared, withoutRows } from "../compare/compare-text";
import { withRegistry } from "../registry-folder";
import { textOfTold, toldAsData } from "../told-text";
import { withoutMarks } from "./measure";

export const result: Command = {
  words: "result STAMP",
  about: "the answer again that a result reference names",
  async run(args) {
    const { words } = parseWords(args, {});
    const stamp = words[0] ?? "";
    if (words.length !== 1 || !/^[0-9a-f]{12}$/.test(stamp))
      throw new UsageError("result requires a result reference: twelve characters of 0-9a-f");
    return withRegistry(async (registry): Promise<Answer> => {
      const place = await tellAgain(registry, stamp);
      if (place) return again(toldAsData(place.told), textOfTold(place.told), place.version === version);
      const compared = await comparedAgain(registry, stamp);
      if (compared) return again(withoutRows(compared.answer), textOfCompared(compared.answer), compared.sameVersion);
      const answer = await ask(registry, stamp);
      if (answer === null) throw new Refusal("No question is kept under that result reference in this registry.");
      return again(withoutMarks(answer), textOfAnswer(answer), answer.sameVersion);
    });
  },
};

function again(answer: object, text: string, sameVersion: boolean): Answer {
  const other = sameVersion ? "" : "\nThe reference comes from another version of the methods: numbers may differ.";
  return done({ ...answer, sameVersion }, text + other);
}
