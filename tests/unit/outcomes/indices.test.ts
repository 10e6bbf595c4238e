import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { definitionSentence, indexDefinition, indexDefinitions, readIndex, type SegmentCase } from "@/lib/outcomes";
import { aSegment } from "./a-segment";

const read = (id: string, recorded: Partial<SegmentCase>, options = {}) => readIndex(aSegment(recorded), indexDefinition(id), options);
const healed = { consolidationDay: 175, gainMm: 50 };

describe("the clocks on one femur: 50 mm, surgery 0, distraction 7 to 57, consolidation 175", () => {
  test.each([
    ["surgery-to-consolidation", 35],
    ["distraction-to-consolidation", 33.6],
    ["maturation", 23.6],
    ["treatment", 35],
    ["distraction", 10],
    ["latency", 7],
    ["distraction-time", 50],
    ["time-to-consolidation", 175],
    ["distraction-rate", 1],
  ])("%s is %d", (id, value) => {
    // arithmetic by hand: days * 10 / mm
    expect(read(id, healed)).toMatchObject({ reading: "measured", value });
  });

  test("182 days and 5.2 cm are 35.0 days/cm", () => {
    expect(read("surgery-to-consolidation", { consolidationDay: 182, gainMm: 52 })).toMatchObject({ value: 35 });
  });

  test("a frame's treatment ends at its removal, and so does its fixator index", () => {
    const frame = { ...healed, device: "circular-fixator" as const, fixatorRemovalDay: 200 };
    expect(read("treatment", frame)).toMatchObject({ value: 40 });
    expect(read("fixator", frame)).toMatchObject({ value: 40 });
  });
});

test("latency + distraction + maturation is surgery to consolidation, for every order of days (definitions, 1.2)", () => {
  const span = fc.integer({ min: 0, max: 400 });
  fc.assert(
    fc.property(span, span, span, fc.integer({ min: 10, max: 200 }), (latency, distraction, maturation, gainMm) => {
      const segment = { distractionStartDay: latency, distractionEndDay: latency + distraction, gainMm };
      const whole = { ...segment, consolidationDay: latency + distraction + maturation };
      const value = (id: string) => {
        const reading = read(id, whole);
        return reading.reading === "measured" ? reading.value : Number.NaN;
      };
      const parts = value("latency") + value("distraction-time") + (value("maturation") * gainMm) / 10;
      expect((value("surgery-to-consolidation") * gainMm) / 10).toBeCloseTo(parts, 9);
    }),
  );
});

describe("what can't be measured says why", () => {
  test.each([
    ["not-lengthening", { procedure: "transport" as const, osteotomyLevels: 2 }],
    ["bone-apart", { bone: "humerus" as const }],
    ["two-level", { osteotomyLevels: 2 }],
    ["still-distracting", { consolidationDay: null, distractionEndDay: null, lastFilmDay: 50 }],
    ["no-gain", { gainMm: null }],
    ["gain-not-positive", { gainMm: 0 }],
    ["gain-under-10mm", { gainMm: 9.9 }],
    ["healing-date-missing", { consolidationDay: null }],
    ["no-start", { distractionStartDay: null }],
    ["days-out-of-order", { distractionStartDay: 180 }],
  ])("%s", (because, recorded) => {
    expect(read("distraction-to-consolidation", { ...healed, ...recorded })).toMatchObject({ reading: "excluded", because });
  });

  test("the upper limb counts when the split names the bone", () => {
    expect(read("maturation", { ...healed, bone: "humerus" }, { boneNamed: true })).toMatchObject({ reading: "measured" });
  });

  test("a plan that isn't recorded is no target", () => {
    const perPlan = { ...indexDefinition("maturation"), per: "plannedGainMm" as const };
    expect(readIndex(aSegment({ ...healed, plannedGainMm: null }), perPlan)).toMatchObject({ because: "no-target" });
  });

  test("a nail's fixator index says what comes first in the list", () => {
    expect(read("fixator", healed)).toMatchObject({ because: "no-end" });
    expect(read("fixator", { ...healed, fixatorRemovalDay: 100 })).toMatchObject({ because: "not-a-fixator" });
  });
});

describe("the unhealed", () => {
  const rescued = { rescueDay: 120, lastFilmDay: 150 };

  test("censored at the last film, never at last seen", () => {
    expect(read("surgery-to-consolidation", { lastFilmDay: 150, lastFollowUpDay: 200 })).toMatchObject({
      reading: "censored",
      days: 150,
      value: 30,
    });
  });

  test("rescued and not yet healed: censored when rescue counts, ended when it competes", () => {
    const competing = { ...indexDefinition("maturation"), rescue: "competing" as const };
    expect(read("maturation", rescued)).toMatchObject({ reading: "censored", days: 93 });
    expect(readIndex(aSegment(rescued), competing)).toMatchObject({ reading: "ended" });
  });

  test("rescued and then healed: measured and said so, or ended", () => {
    const whole = { ...rescued, consolidationDay: 300 };
    const competing = { ...indexDefinition("maturation"), rescue: "competing" as const };
    expect(read("maturation", whole)).toMatchObject({ reading: "measured", rescued: true });
    expect(readIndex(aSegment(whole), competing)).toMatchObject({ reading: "ended" });
  });

  test("an operation after consolidation is no rescue", () => {
    expect(read("maturation", { ...healed, rescueDay: 400 })).toMatchObject({ reading: "measured", rescued: false });
  });

  test("ended unhealed", () => {
    expect(read("maturation", { endState: "amputated", lastFilmDay: 100 })).toMatchObject({ reading: "ended" });
  });

  test("on the day scale a bone still being lengthened is censored at its last film", () => {
    expect(read("time-to-consolidation", { distractionEndDay: null, lastFilmDay: 50 })).toMatchObject({ reading: "censored", days: 50 });
  });
});

test("the film interval is the time since the last film not healed", () => {
  expect(read("maturation", { ...healed, lastNotHealedDay: 140 })).toMatchObject({ filmIntervalDays: 35 });
});

test("an unknown clock is an error that says so", () => {
  expect(() => indexDefinition("speed")).toThrow("indexDefinition requires the id of a clock, received speed");
});

test("a definition reads as a sentence", () => {
  expect(definitionSentence(indexDefinition("distraction-rate"))).toBe(
    "length gained a day, in mm, from the start of distraction to the end of distraction",
  );
  expect(new Set(indexDefinitions.map(definitionSentence)).size).toBe(indexDefinitions.length);
});
