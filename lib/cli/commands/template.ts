import { templateNames } from "@/lib/codebook";
import { templateCsv } from "@/lib/intake";
import { parseWords, UsageError } from "../arguments";
import { type Command, done } from "../command";

const names = [...Object.keys(templateNames), "one-sheet"] as (keyof typeof templateNames | "one-sheet")[];

export const template: Command = {
  words: `template ${names.join("|")}`,
  about: "an empty sheet with the headers of the codebook",
  async run(args) {
    const { words } = parseWords(args, {});
    const name = names.find((one) => one === words[0]);
    if (words.length !== 1 || !name) throw new UsageError(`template requires one of ${names.join(", ")}`);
    const csv = templateCsv(name);
    return done(csv, csv.trimEnd());
  },
};
