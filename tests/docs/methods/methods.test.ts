import { expect, test } from "vitest";
import { listMethods } from "@/lib/stats";
import { idsOf } from "../../external/r-scripts";
import { checksOf } from "../../external/stat-checks";
import { apart, comparisons } from "./page";

const compared = new Set(comparisons.map(({ check }) => check));

test("the page names no method that is none", () => {
  const ids = listMethods().map(({ id }) => id);
  expect(comparisons.map(({ method }) => method).filter((method) => !ids.includes(method))).toEqual([]);
});

/** Answers that stand in a unit test only: of the room's ground, or asked in another form than a method's. */
const elsewhere = [
  /^fn-/,
  /^grid-/,
  /^t-two-sample-nist-auto$/,
  /^smd-small-unequal$/,
  /^edge-clusters-all-size-1$/,
  /^poisson-regression-offset$/,
  /^gray-melanoma$/,
  /^signs-darwin$/,
  /^bootstrap-five$/,
  /^cox-heart-entry$/,
  /^rmst-heart-entry$/,
  /^logrank-heart-entry$/,
  /^time-model-lung-few$/,
  /^cox-lung-few$/,
  /^normal-tail$/,
];

test.each([
  ["stat-checks", checksOf("").map(({ id }) => id)],
  ...["means", "time", "agreement"].map((name) => [name, idsOf(name)] as const),
] as const)("every outside answer of %s stands on the page or is tested elsewhere", (_, ids) => {
  expect(ids.filter((id) => !compared.has(id) && !elsewhere.some((pattern) => pattern.test(id)))).toEqual([]);
});

test("no answer of R is further from ours than 1e-6 of its size", () => {
  const far = comparisons.filter(({ method, source, ours, theirs }) => {
    const pairs = [theirs].flat(3).map((their, i) => apart([ours].flat(3)[i], their));
    // survfit stops early on interval-censored rows: see seenBetween
    return source.startsWith("R, ") && method !== "turnbull" && Math.max(...pairs) > 1e-6;
  });
  expect(far.map(({ check, field }) => `${check} ${field}`)).toEqual([]);
});
