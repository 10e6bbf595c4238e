import { type Field, snake } from "@/lib/codebook";

/** A CHECK of one column: `segment_gain_mm_limits`. The name is what a refusal says, so it tells table, column and rule. */
export type Check = { readonly name: string; readonly rule: string };

/** Days on a person's line. Wider than any dated line (1900 to 2100, shifted by up to a century) and any undated one (10 000 × year). */
const days = [-100_000, 22_000_000] as const;
const keyedAlphabet = "0-9A-HJKMNP-TV-Z";

// not IN (…): SQLite would build that list anew for each row written, and a commit would take four times as long
const oneOf = (column: string, values: readonly string[]) => values.map((value) => `${column} = ${value}`).join(" OR ");
const between = ([low, high]: readonly [number, number]) => `BETWEEN ${low} AND ${high}`;

/**
 * The rule of a listed field. SQLite has no regular expressions, so the codebook's one shape of pattern is told by GLOB.
 * @throws RangeError when the pattern has another shape
 */
function listedRule(column: string, pattern: string): string {
  const longest = /^\^\[a-z\]\[a-z0-9-\]\{1,(\d+)\}\$$/.exec(pattern)?.[1];
  if (!longest) throw new RangeError(`listedRule requires a pattern such as ^[a-z][a-z0-9-]{1,15}$, received ${pattern}`);
  return `length(${column}) ${between([2, Number(longest) + 1])} AND ${column} GLOB '[a-z]*' AND ${column} NOT GLOB '*[^a-z0-9-]*'`;
}

function ruleOf(id: string, column: string, field: Field): readonly [suffix: string, rule: string] {
  switch (field.kind) {
    case "code":
      return [
        "codes",
        oneOf(
          column,
          field.codes.map((code) => `'${code}'`),
        ),
      ];
    case "flag":
      return ["flag", oneOf(column, ["0", "1"])];
    case "keyed":
      return ["keyed", `length(${column}) = 26 AND ${column} NOT GLOB '*[^${keyedAlphabet}]*'`];
    case "listed":
      return ["listed", listedRule(column, field.pattern)];
    case "day":
      return ["days", `${column} ${between(days)}`];
    case "count":
    case "number":
      if (!field.hard) throw new RangeError(`checkOf requires hard limits of a ${field.kind}, received none for ${id}`);
      return ["limits", `${column} ${between(field.hard)}`];
  }
}

/**
 * What a column accepts beside its type. A blank passes every rule: NOT NULL alone speaks of blanks.
 * @throws RangeError when the codebook gives a number without hard limits
 */
export function checkOf(table: string, id: string, field: Field): Check {
  const column = snake(id);
  const [suffix, rule] = ruleOf(id, column, field);
  return { name: `${table}_${column}_${suffix}`, rule };
}

/** SQL type of a field in a STRICT table. INTEGER refuses what isn't whole. */
export function typeOf(field: Field): "TEXT" | "INTEGER" | "REAL" {
  if (field.kind === "number") return "REAL";
  return field.kind === "flag" || field.kind === "day" || field.kind === "count" ? "INTEGER" : "TEXT";
}
