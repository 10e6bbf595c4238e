import { beforeAll, describe, expect, test } from "vitest";
import { type Answers, differences, fingerprint, hasR, runScript, scriptNames, storedAnswers } from "./r-scripts";
import { checksOf } from "./stat-checks";

const withR = hasR();

describe.each(scriptNames())("%s.R", (name) => {
  const stored = storedAnswers(name);
  let fresh: Answers = {};

  beforeAll(() => {
    if (withR) fresh = runScript(name);
  });

  test("has not changed since its answers were stored (npm run answers)", () => {
    expect(fingerprint(name)).toBe(stored.script);
  });

  test.runIf(withR)("answers exactly the questions whose answers are stored", () => {
    expect(Object.keys(fresh).sort()).toEqual(Object.keys(stored.answers).sort());
  });

  // Without R these stand in the summary as skipped, and the run's last line counts them (announce.ts).
  test.runIf(withR).each(Object.keys(stored.answers))("%s: R gives the stored answer again", (id) => {
    expect(differences(stored.answers[id] ?? null, fresh[id] ?? null)).toEqual([]);
  });
});

test("a changed digit, a missing field and a changed null are differences", () => {
  expect(differences({ a: 1, b: null }, { a: 1 + 1e-6, b: null })).toHaveLength(1);
  expect(differences({ a: 1, b: 2 }, { a: 1 })).toHaveLength(1);
  expect(differences({ a: [1, null] }, { a: [1, 0] })).toHaveLength(1);
  expect(differences({ a: [1, 1e15], b: "x" }, { a: [1, 1e15 + 1], b: "x" })).toEqual([]);
});

test.each(checksOf("").map((one) => [one.id, one] as const))(
  "%s: the check holds what R answered",
  (id, { provenance, expected, computed }) => {
    const theirs = provenance === "published" ? computed : expected;
    expect(differences(theirs ?? null, storedAnswers("answers").answers[id] ?? null)).toEqual([]);
  },
);
