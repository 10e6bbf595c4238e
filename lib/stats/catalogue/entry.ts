import type * as z from "zod";

/** A method that can be asked by its name with plain JSON. */
export interface Entry {
  /** The method's standard term and the name of its file. */
  readonly id: string;
  readonly title: string;
  readonly schema: z.ZodType;
  readonly example: unknown;
  /** Reads the input, calls the method. @throws RangeError, TypeError naming field, expected and received */
  readonly run: (input: unknown) => object;
}

/** An entry whose example and call are checked against its schema by the compiler. */
export function method<S extends z.ZodType>(
  id: string,
  title: string,
  schema: S,
  call: (input: z.output<S>) => object,
  example: z.input<S>,
): Entry {
  return { id, title, schema, example, run: (input) => call(parsed(id, schema, input)) };
}

function parsed<S extends z.ZodType>(id: string, schema: S, input: unknown): z.output<S> {
  const result = schema.safeParse(input, { reportInput: true });
  if (result.success) return result.data;
  throw new TypeError(`stats ${id} requires ${result.error.issues.map(sentence).join("; ")}`);
}

type Issue = z.core.$ZodIssue;

/** "values[3] to be a number, received null": what is received is described, never quoted, for it may be a name. */
function sentence(issue: Issue): string {
  const field = issue.path.map((part) => (typeof part === "number" ? `[${part}]` : `.${String(part)}`)).join("");
  return `${field.slice(field.startsWith(".") ? 1 : 0) || "the input"} ${expected(issue)}, received ${received(issue)}`;
}

function expected(issue: Issue): string {
  switch (issue.code) {
    case "unrecognized_keys":
      return "to hold no other field than its own";
    case "too_small":
      return `to be ${issue.inclusive ? "at least" : "above"} ${issue.minimum}`;
    case "too_big":
      return `to be ${issue.inclusive ? "at most" : "below"} ${issue.maximum}`;
    case "invalid_value":
      return `to be one of ${issue.values.map(String).join(", ")}`;
    case "invalid_union":
      return "to be a text or a number";
    case "invalid_type":
      return `to be ${article(issue.expected)}`;
    default:
      return "to fit its schema";
  }
}

function received(issue: Issue): string {
  if (issue.code === "unrecognized_keys") return issue.keys.length === 1 ? "one more" : `${issue.keys.length} more`;
  const input = issue.input;
  if (typeof input === "number") return String(input);
  if (input === undefined) return "nothing";
  if (input === null) return "null";
  return Array.isArray(input) ? `a list of ${input.length}` : article(typeof input === "string" ? "text" : typeof input);
}

function article(kind: string): string {
  const named = { int: "whole number", array: "list", string: "text", boolean: "true or false" }[kind] ?? kind;
  return named === "true or false" ? named : `${/^[aeio]/.test(named) ? "an" : "a"} ${named}`;
}
