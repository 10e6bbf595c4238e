import { expect } from "vitest";
import { storedAnswers } from "../../external/r-scripts";
import type { CheckValue } from "../../external/stat-checks";

type Fields = Readonly<Record<string, CheckValue>>;

/** One answer of tests/external/time.R: the columns it was asked with and what R said. */
export function timeAnswer(id: string): { input: Fields; expected: Fields } {
  const found = storedAnswers("time").answers[id];
  if (!found) throw new RangeError(`timeAnswer requires an id of time.json, received ${id}`);
  return found as { input: Fields; expected: Fields };
}

/** A column of an answer as numbers; null (not observed) stays null. */
export function column(fields: Fields, name: string): number[] {
  const found = fields[name];
  if (!Array.isArray(found)) throw new RangeError(`column requires a column named ${name}`);
  return found.map(Number);
}

/** Every number within `tolerance` of R's, relative above 1; nulls in the same places. */
export function expectClose(actual: unknown, expected: CheckValue | undefined, tolerance = 1e-8, at = "value"): void {
  if (Array.isArray(expected)) {
    expect(actual, at).toHaveLength(expected.length);
    for (const [i, one] of expected.entries()) expectClose((actual as unknown[])[i], one as CheckValue, tolerance, `${at}[${i}]`);
  } else if (typeof expected === "number") {
    expect(typeof actual, at).toBe("number");
    const gap = Math.abs((actual as number) - expected);
    expect(gap, `${at}: ours ${actual}, theirs ${expected}`).toBeLessThanOrEqual(tolerance * Math.max(1, Math.abs(expected)));
  } else {
    expect(expected, `${at} has an expected answer`).not.toBeUndefined();
    expect(actual, at).toBe(expected);
  }
}
