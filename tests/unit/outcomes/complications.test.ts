import { describe, expect, test } from "vitest";
import { type EventFacts, isComplication, phaseOf, schemeOf, treatmentEnd, tripleContractOf, worseOf } from "@/lib/outcomes";
import { aSegment } from "./a-segment";

/** An equinus in distraction that resolved with physiotherapy. */
function anEvent(with_: Partial<EventFacts> = {}): EventFacts {
  return {
    eventType: "equinus",
    onsetDay: 40,
    phase: null,
    handling: "advice-or-physiotherapy",
    planned: null,
    planChanged: null,
    resolved: true,
    resolvedDay: 90,
    goalMissed: null,
    lifeOrLimbThreat: null,
    death: null,
    sequela: "none",
    purpose: null,
    consequenceOf: null,
    ...with_,
  };
}
const classOf = (scheme: string, facts: Partial<EventFacts>, end: number | null = 200) => schemeOf(scheme).classify(anEvent(facts), end);
const operated = { handling: "operation-under-anaesthesia" as const };

describe("problems, obstacles and complications (Paley 1990; the cut of minor and major from memory)", () => {
  test.each<[string, Partial<EventFacts>]>([
    ["problem", {}],
    ["obstacle", operated],
    ["complication-minor", { phase: "in-theatre" }],
    ["complication-minor", { resolvedDay: 260 }],
    ["complication-minor", { resolved: false, sequela: "temporary" }],
    ["complication-major", { sequela: "permanent" }],
    ["complication-major", { resolved: false, goalMissed: true }],
    ["complication-major", { ...operated, onsetDay: 230, resolvedDay: 240 }],
  ])("%s", (name, facts) => expect(classOf("problem-obstacle", facts)).toBe(name));
});

describe("other schemes", () => {
  test.each<[string, string | null, Partial<EventFacts>]>([
    ["three-level", "minor", {}],
    ["three-level", "serious", operated],
    ["three-level", "severe", { ...operated, sequela: "permanent" }],
    ["severity", "i", {}],
    ["severity", "ii", { planChanged: true }],
    ["severity", "ii", operated],
    ["severity", "iiia", { goalMissed: true }],
    ["severity", "iiib", { goalMissed: true, sequela: "permanent" }],
    ["surgical", "i", {}],
    ["surgical", "ii", { handling: "oral-drug" }],
    ["surgical", "iii", { handling: "intravenous-drug" }],
    ["surgical", "iva", { lifeOrLimbThreat: true }],
    ["surgical", "ivb", { sequela: "permanent" }],
    ["surgical", "v", { death: true }],
    ["device-related", null, {}],
    ["device-related", "ia", { eventType: "runaway" }],
    ["device-related", "iib", { eventType: "nail-broken", handling: "implant-exchanged" }],
    ["device-related", "iiic", { eventType: "corrosion", sequela: "permanent" }],
  ])("%s: %s", (scheme, name, facts) => expect(classOf(scheme, facts)).toBe(name));

  test("a planned exchange is an operation and no complication", () => {
    expect(isComplication(anEvent({ handling: "implant-exchanged", planned: true }))).toBe(false);
    expect(isComplication(anEvent())).toBe(true);
  });

  test("the worse of two classes", () => {
    expect(worseOf(schemeOf("severity"), "i", "iiia")).toBe("iiia");
    expect(worseOf(schemeOf("severity"), null, "i")).toBe("i");
  });

  test("an unknown scheme is an error that says so", () => {
    expect(() => schemeOf("colours")).toThrow("schemeOf requires a scheme among problem-obstacle, triple-contract");
  });
});

describe("the triple contract, with and without its time rule", () => {
  // 50 mm in 226 days is 45.2 days/cm: slow healing alone
  const slow = aSegment({ consolidationDay: 226 });
  test("slow healing alone breaks it with the time rule only", () => {
    expect(tripleContractOf(slow, [])).toEqual({ class: "iii", timeRule: "45-days-per-cm", timeBroken: true });
    expect(tripleContractOf(slow, [], { withTime: false })).toEqual({ class: "i", timeRule: null, timeBroken: false });
  });
  test("exactly 45 days/cm keeps it", () => {
    expect(tripleContractOf(aSegment({ consolidationDay: 225 }), [])).toMatchObject({ class: "i" });
  });
  test("a recorded planned time stands before the rule", () => {
    expect(tripleContractOf(aSegment({ consolidationDay: 226, plannedDaysToConsolidation: 230 }), [])).toMatchObject({
      class: "i",
      timeRule: "planned",
    });
  });
  test("stopped short of the plan", () => {
    expect(tripleContractOf(aSegment({ consolidationDay: 150, gainMm: 44 }), [])).toMatchObject({ class: "iii" });
  });
  test("a sequela is the worst, and a planned operation is none", () => {
    const events = [anEvent({ ...operated, planned: true }), anEvent({ sequela: "permanent" })];
    expect(tripleContractOf(aSegment({ consolidationDay: 150 }), events)).toMatchObject({ class: "iv" });
    expect(tripleContractOf(aSegment({ consolidationDay: 150 }), events.slice(0, 1))).toMatchObject({ class: "i" });
  });
});

describe("end of treatment and phase", () => {
  const healed = aSegment({ consolidationDay: 180, fullWeightBearingDay: 210, implantRemovalDay: 500 });
  test.each([
    ["healed-and-bearing", 210],
    ["implant-removal", 500],
    ["twelve-months", 365],
  ] as const)("a nail, %s: day %d", (rule, day) => expect(treatmentEnd(healed, rule)).toBe(day));
  test("a frame: its removal", () => {
    expect(treatmentEnd(aSegment({ device: "circular-fixator", fixatorRemovalDay: 170, consolidationDay: 180 }))).toBe(170);
  });
  test.each([
    [3, "latency"],
    [7, "distraction"],
    [57, "distraction"],
    [58, "consolidation"],
    [210, "consolidation"],
    [211, "after"],
  ])("day %d is %s", (onsetDay, phase) => expect(phaseOf({ phase: null, onsetDay }, healed, 210)).toBe(phase));
});
