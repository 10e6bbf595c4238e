import { Refusal, UsageError } from "./arguments";
import { commands } from "./commands";

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
