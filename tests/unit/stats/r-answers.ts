import { expect } from "vitest";
import { type Answer, storedAnswers } from "../../external/r-scripts";

type Fields = Readonly<Record<string, Answer>>;

/** The stored answers of an R script whose id starts with the prefix, as [id, fields]. */
export function answersOf(script: string, prefix: string): [string, Fields][] {
  const found = Object.entries(storedAnswers(script).answers).filter(([id]) => id.startsWith(prefix));
  if (found.length === 0) throw new RangeError(`answersOf requires answers to ${prefix} in ${script}.json, received none`);
  return found as [string, Fields][];
}

export function answerOf(script: string, id: string): Fields {
  return (answersOf(script, id).find(([name]) => name === id) as [string, Fields])[1];
}

export const numbersOf = (fields: Fields, name: string) => Object.freeze(fields[name]) as readonly number[];
export const labelsOf = (fields: Fields, name: string) => Object.freeze(fields[name]) as readonly (string | number)[];
export const rowsOf = (fields: Fields, name: string) => Object.freeze(fields[name]) as readonly (readonly number[])[];

/** Every field that R answered with a number agrees to 1e-8 of its size (1e-12 near zero). */
export function expectAsR(ours: object, fields: Fields, names: readonly string[], relative = 1e-8): void {
  for (const name of names) expectClose((ours as Fields)[name], fields[name], name, relative);
}

export function expectClose(ours: unknown, theirs: unknown, name: string, relative = 1e-8): void {
  expect(typeof ours, name).toBe("number");
  expect(typeof theirs, name).toBe("number");
  expect(Math.abs((ours as number) - (theirs as number)), `${name}: ours ${ours}, R ${theirs}`).toBeLessThanOrEqual(
    relative * Math.abs(theirs as number) + 1e-12,
  );
}
