import { type ParseArgsConfig, parseArgs } from "node:util";

/** The call was wrong: exit 2, with a sentence that says what is right. */
export class UsageError extends Error {
  override name = "UsageError";
}

/** Nothing was committed, or the answer is refused: exit 1. `answer` is what `--json` prints. */
export class Refusal extends Error {
  override name = "Refusal";
  readonly answer: unknown;
  constructor(message: string, answer: unknown = null) {
    super(message);
    this.answer = answer;
  }
}

type Options = NonNullable<ParseArgsConfig["options"]>;

/** Parse a command's words; every command takes `--json`. @throws UsageError */
export function parseWords<const O extends Options>(args: readonly string[], options: O) {
  try {
    const parsed = parseArgs({ args: [...args], options: { ...options, json: { type: "boolean" } }, allowPositionals: true, strict: true });
    return { values: parsed.values as Record<string, string | boolean | string[] | undefined>, words: parsed.positionals };
  } catch (error) {
    throw new UsageError(error instanceof Error ? error.message : "the call was wrong");
  }
}

/** An option with a text, or undefined. */
export function textOf(values: Record<string, string | boolean | string[] | undefined>, name: string): string | undefined {
  const value = values[name];
  return typeof value === "string" ? value : undefined;
}

/** An option that takes one of a few words. @throws UsageError */
export function oneOf<const Word extends string>(
  values: Record<string, string | boolean | string[] | undefined>,
  name: string,
  allowed: readonly Word[],
): Word | undefined {
  const value = textOf(values, name);
  if (value === undefined) return undefined;
  const word = allowed.find((one) => one === value);
  if (!word) throw new UsageError(`--${name} requires one of ${allowed.join(", ")}`);
  return word;
}

/** An option that takes a whole number. @throws UsageError */
export function wholeNumber(values: Record<string, string | boolean | string[] | undefined>, name: string): number | undefined {
  const value = textOf(values, name);
  if (value === undefined) return undefined;
  if (!/^\d{1,9}$/.test(value)) throw new UsageError(`--${name} requires a whole number`);
  return Number(value);
}

/** A question with a wrong word is a wrong call. */
export async function asked<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof RangeError) throw new UsageError(error.message);
    throw error;
  }
}
