import { describe, expect, test } from "vitest";
import { type PersonCase, personMeasures, reamedMinusNailMm, type SegmentCase, statureGainMm, usualOptions } from "@/lib/outcomes";
import { aSegment } from "./a-segment";

describe("arms are no legs", () => {
  const person = (segments: readonly SegmentCase[], held: Partial<PersonCase> = {}): PersonCase => ({
    person: 1,
    sex: "female",
    indication: "stature",
    aetiology: null,
    proportionReference: null,
    followUpStatus: null,
    followUpStatusDay: null,
    line: "dated",
    ageAtSurgeryYears: 30,
    segments,
    bodyMeasures: [],
    scores: [],
    ...held,
  });
  const both = (held: Partial<SegmentCase>) => (["left", "right"] as const).map((side) => aSegment({ ...held, side }));
  const humeri = both({ bone: "humerus", gainMm: 80 });
  const femora = both({ gainMm: 60 });

  test("humeri make nobody taller: no gain of stature is measured, not one of 0", () => {
    expect(statureGainMm(person(humeri))).toEqual({ measured: false, because: "bone-apart" });
    expect(statureGainMm(person([...femora, ...humeri]))).toEqual({ measured: true, value: 60 });
  });
  test("two humeri and one femur are one side only", () => {
    expect(statureGainMm(person([...humeri, aSegment()]))).toEqual({ measured: false, because: "one-side-only" });
  });
  test("a humerus whose gain isn't recorded takes nothing from the legs", () => {
    expect(statureGainMm(person([...femora, aSegment({ bone: "humerus", gainMm: null })]))).toEqual({ measured: true, value: 60 });
  });
  test("a transport is no lengthening", () => {
    expect(statureGainMm(person(both({ procedure: "transport" })))).toEqual({ measured: false, because: "not-lengthening" });
  });
  test("the span of lengthened arms isn't predicted from the legs alone", () => {
    const predicted = personMeasures.find(({ id }) => id === "proportion-span.predicted");
    expect(predicted?.read(person([...femora, ...humeri]), usualOptions)).toEqual({ measured: false, because: "bone-apart" });
  });
});

describe("reamed diameter less the nail's", () => {
  test.each([
    [1.5, { reamedDiameterMm: 12.2, nailDiameterMm: 10.7 }],
    [null, { reamedDiameterMm: 12, nailDiameterMm: 10.7, nailUse: "outside-canal" as const }],
    [null, { reamedDiameterMm: null, nailDiameterMm: 10.7 }],
  ])("%s mm", (value, recorded) => expect(reamedMinusNailMm(aSegment(recorded))).toBe(value));
});
