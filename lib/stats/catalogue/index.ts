import * as z from "zod";
import { agreement } from "./agreement";
import type { Entry } from "./entry";
import { means } from "./means";
import { shares } from "./shares";
import { tables } from "./tables";
import { time } from "./time";

/** A method as a script sees it: its input as JSON Schema, and an example whose output was made by running it. */
export interface ListedMethod {
  readonly id: string;
  readonly title: string;
  readonly input: z.core.JSONSchema.BaseSchema;
  readonly example: { readonly input: unknown; readonly output: object };
}

const entries: readonly Entry[] = [...shares, ...means, ...tables, ...agreement, ...time].sort((a, b) => (a.id < b.id ? -1 : 1));

/** Every method of this room, by its id in alphabetical order. */
export function listMethods(): readonly ListedMethod[] {
  return entries.map(({ id, title, schema, example, run }) => ({
    id,
    title,
    input: z.toJSONSchema(schema, { io: "input" }),
    example: { input: example, output: run(example) },
  }));
}

/**
 * Calls a method by its id with plain JSON.
 * @throws RangeError for an id that is none; RangeError or TypeError naming what the input should be
 * @example runMethod("wilson", { x: 0, n: 20 }).upper.toFixed(4) // => "0.1611"
 */
export function runMethod(id: string, input: unknown): Readonly<Record<string, unknown>> {
  const entry = entries.find((one) => one.id === id);
  if (!entry) throw new RangeError("stats requires the id of a method, as stats --list gives them, received another word");
  return { ...entry.run(input) };
}
