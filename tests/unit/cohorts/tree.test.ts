import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  canonicalWhere,
  type GroupNode,
  groupWhere,
  matches,
  parseSplitField,
  splitValue,
  treeOf,
  type Where,
  whereOf,
} from "@/lib/cohorts";

const leaf: fc.Arbitrary<Where> = fc.oneof(
  fc.record({ bone: fc.uniqueArray(fc.constantFrom("femur", "tibia", null), { minLength: 1 }) }),
  fc.record({ gainMm: fc.record({ from: fc.integer({ min: 0, max: 90 }) }) }),
  fc.record({ gainMm: fc.record({ to: fc.integer({ min: 0, max: 90 }) }) }),
  fc.record({ smoking: fc.record({ missing: fc.boolean() }) }),
);
const { where } = fc.letrec<{ where: Where }>((tie) => ({
  where: fc.oneof(
    { maxDepth: 3, withCrossShrink: true },
    leaf,
    fc.record({ any: fc.array(tie("where"), { minLength: 1, maxLength: 3 }) }),
    fc.record({ all: fc.array(tie("where"), { minLength: 1, maxLength: 3 }) }),
    fc.record({ not: tie("where") }),
    fc.tuple(leaf, tie("where")).map(([a, b]) => ({ ...b, ...a })),
  ),
}));
const segment = fc.record({
  bone: fc.constantFrom("femur", "tibia", null),
  gainMm: fc.oneof(fc.integer({ min: 0, max: 90 }), fc.constant(null)),
  smoking: fc.constantFrom("now", null),
});

describe("a cohort as sentences", () => {
  test("means the same segments as before", () => {
    fc.assert(
      fc.property(where, segment, (one, held) => {
        const look = (field: string) => (held as Record<string, string | number | null>)[field] ?? null;
        expect(matches(whereOf(treeOf(one)), look)).toBe(matches(one, look));
      }),
      { numRuns: 2000 },
    );
  });

  test("reads back as it was written, once it was sentences", () => {
    fc.assert(
      fc.property(where, (one) => {
        const text = canonicalWhere(whereOf(treeOf(one)));
        expect(canonicalWhere(whereOf(treeOf(JSON.parse(text) as Where)))).toBe(text);
      }),
      { numRuns: 2000 },
    );
  });

  test("plain conditions need no list, a second one of a field does", () => {
    const sentences = (items: GroupNode["items"]): GroupNode => ({ node: "group", join: "all", negated: false, items });
    const femur = { node: "condition", field: "bone", part: ["femur"] } as const;
    const atLeast = { node: "condition", field: "gainMm", part: { from: 30 } } as const;
    const atMost = { node: "condition", field: "gainMm", part: { to: 60 } } as const;
    expect(whereOf(sentences([femur, atLeast]))).toEqual({ bone: ["femur"], gainMm: { from: 30 } });
    expect(whereOf(sentences([atLeast, atMost]))).toEqual({ all: [{ gainMm: { from: 30 } }, { gainMm: { to: 60 } }] });
    expect(whereOf(sentences([{ ...sentences([]), negated: true }]))).toEqual({});
  });
});

describe("a group of a split as a cohort", () => {
  const bySplit = fc.constantFrom("gainMm:30/50/80", "gainMm", "bone");
  test("holds the segments that the split puts into the group, and no other", () => {
    fc.assert(
      fc.property(bySplit, segment, segment, (text, one, other) => {
        const field = parseSplitField(text);
        const valueIn = (held: Record<string, string | number | null>) => splitValue(field, held[field.id] ?? null);
        const group = groupWhere({}, [text], { [field.id]: valueIn(one) });
        expect(matches(group, (id) => (other as Record<string, string | number | null>)[id] ?? null)).toBe(valueIn(one) === valueIn(other));
      }),
      { numRuns: 2000 },
    );
  });

  test("stays within what was asked", () => {
    expect(groupWhere({ smoking: ["now"] }, ["bone"], { bone: "femur" })).toEqual({ all: [{ smoking: ["now"] }, { bone: ["femur"] }] });
    expect(groupWhere({}, ["gainMm:30/50"], { gainMm: "30 to under 50" })).toEqual({ gainMm: { from: 30 }, not: { gainMm: { from: 50 } } });
  });
});
