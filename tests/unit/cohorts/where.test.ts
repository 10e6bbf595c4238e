import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { CohortError, canonicalWhere, describeWhere, fieldsNamed, matches, parseWhere, type Where } from "@/lib/cohorts";

const leaf: fc.Arbitrary<Where> = fc.oneof(
  fc.record({ bone: fc.uniqueArray(fc.constantFrom("femur", "tibia", null), { minLength: 1 }) }),
  fc.record({ surgeryYear: fc.record({ from: fc.integer({ min: 2000, max: 2030 }) }) }),
  fc.record({ smoking: fc.record({ missing: fc.boolean() }) }),
);
const where: fc.Arbitrary<Where> = fc.oneof(leaf, fc.record({ any: fc.array(leaf, { minLength: 1, maxLength: 3 }), not: leaf }));

test("a cohort reads back as it was written, in one form", () => {
  fc.assert(
    fc.property(where, (one) => {
      const text = canonicalWhere(one);
      expect(canonicalWhere(parseWhere(text))).toBe(text);
    }),
  );
});

test("the same cohort written in another order is the same text", () => {
  expect(canonicalWhere({ surgeryYear: { to: 2025, from: 2022 }, bone: ["tibia", "femur", "tibia"] })).toBe(
    '{"bone":["femur","tibia"],"surgeryYear":{"from":2022,"to":2025}}',
  );
});

describe("what is in it", () => {
  const segment: Record<string, string | number | boolean | null> = { bone: "femur", surgeryYear: 2022, diabetes: null, gainMm: 50 };
  test.each<[Where, boolean]>([
    [{}, true],
    [{ bone: ["femur"] }, true],
    [{ bone: ["tibia"] }, false],
    [{ bone: ["femur"], surgeryYear: { from: 2023 } }, false],
    [{ surgeryYear: { from: 2022, to: 2022 } }, true],
    [{ diabetes: [null] }, true],
    [{ diabetes: [false] }, false],
    [{ diabetes: { missing: true } }, true],
    [{ gainMm: { missing: false } }, true],
    [{ any: [{ bone: ["tibia"] }, { gainMm: { from: 40 } }] }, true],
    [{ not: { bone: ["femur"] } }, false],
    [{ all: [{ bone: ["femur"] }, { gainMm: { to: 40 } }] }, false],
  ])("%j: %j", (cohort, inside) => {
    expect(matches(cohort, (field) => segment[field] ?? null)).toBe(inside);
  });

  test("what isn't recorded lies in no range", () => {
    expect(matches({ gainMm: { from: 0 } }, () => null)).toBe(false);
  });
});

describe("what is no cohort", () => {
  test.each([
    ["not json", "JSON"],
    ["[]", "an object"],
    ['{"person":["7M"]}', "field of the codebook"],
    ['{"surgeryDay":{"from":1}}', "field of the codebook"],
    ['{"bone":["femurs"]}', "bone requires codes among femur, tibia"],
    ['{"bone":{"from":1}}', "bone holds no numbers"],
    ['{"bone":[]}', "bone requires a list of values"],
    ['{"gainMm":{"from":1,"about":2}}', "gainMm requires"],
    ['{"any":{}}', "any requires a list"],
    [`${'{"not":'.repeat(9)}{}${"}".repeat(9)}`, "at most six levels"],
  ])("%s", (text, message) => {
    expect(() => parseWhere(text)).toThrow(CohortError);
    expect(() => parseWhere(text)).toThrow(message);
  });
});

test("in words", () => {
  expect(describeWhere({})).toBe("all segments");
  expect(describeWhere({ bone: ["femur"], device: ["magnetic-nail"], surgeryYear: { from: 2022, to: 2025 } })).toBe(
    "bone femur and device magnetic nail and year of surgery 2022 to 2025",
  );
});

test("fields are named however deep they stand", () => {
  expect(fieldsNamed({ any: [{ bone: ["femur"] }, { not: { device: ["other"] } }], gainMm: { from: 1 } })).toEqual(
    new Set(["bone", "device", "gainMm"]),
  );
});
