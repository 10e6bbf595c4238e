import { Refusal, UsageError } from "./arguments";
import type { Command } from "./command";
import { batches } from "./commands/batches";
import { casebook } from "./commands/casebook";
import { cohort } from "./commands/cohort";
import { compare } from "./commands/compare";
import { completeness } from "./commands/completeness";
import { complications } from "./commands/complications";
import { correct } from "./commands/correct";
import { followUp } from "./commands/follow-up";
import { intake } from "./commands/intake";
import { join } from "./commands/join";
import { measure } from "./commands/measure";
import { outcome } from "./commands/outcome";
import { part } from "./commands/part";
import { result } from "./commands/result";
import { settings } from "./commands/settings";
import { stats } from "./commands/stats";
import { template } from "./commands/template";
import { undo } from "./commands/undo";

const commands: Readonly<Record<string, Command>> = {
  intake,
  undo,
  batches,
  casebook,
  completeness,
  correct,
  join,
  part,
  template,
  measure,
  compare,
  complications,
  outcome,
  "follow-up": followUp,
  cohort,
  result,
  settings,
  stats,
};

function help(): string {
  const lines = Object.values(commands).map(({ words, about }) => `  ${words}\n      ${about}`);
  return [
    "npm run -s lengthbook -- COMMAND … [--json]",
    ...lines,
    "Exit: 0 done, 1 nothing committed or refused, 2 the call was wrong.",
  ].join("\n");
}

/** Answers go to stdout, messages to stderr; with `--json` stdout holds one object and nothing else. */
async function main(args: readonly string[]): Promise<number> {
  const [name, ...rest] = args;
  const json = rest.includes("--json");
  const print = (value: unknown) => process.stdout.write(`${typeof value === "string" ? value.trimEnd() : JSON.stringify(value)}\n`);
  const command = name === undefined ? undefined : commands[name];
  if (!command) {
    process.stderr.write(`${help()}\n`);
    return name === "help" ? 0 : 2;
  }
  try {
    const { answer, text, exit } = await command.run(rest);
    print(json ? answer : text);
    return exit;
  } catch (error) {
    if (!(error instanceof UsageError) && !(error instanceof Refusal)) throw error;
    if (error instanceof Refusal && json) print(error.answer ?? { refused: error.message });
    process.stderr.write(`${error.message}\n`);
    return error instanceof UsageError ? 2 : 1;
  }
}

main(process.argv.slice(2)).then(
  (code) => {
    process.exitCode = code;
  },
  (error: unknown) => {
    process.stderr.write(`lengthbook failed: ${error instanceof Error ? error.message : "for an unknown reason"}\n`);
    process.exitCode = 1;
  },
);
