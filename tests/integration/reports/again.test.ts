import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { caseMix, compare, comparedAgain, compareSeveral, result } from "@/lib/answers";
import {
  type Told,
  tellAgain,
  tellComplications,
  tellDaysAtEqualGain,
  tellDistractionCourse,
  tellFollowUp,
  tellGainAgainstPlan,
  tellHealingCurve,
  tellIncidence,
  tellMeasured,
  tellMotion,
  tellProportion,
  tellSeveralGroups,
  tellSideBySide,
} from "@/lib/reports";
import { demoRegistry } from "../demo-registry";

type Registry = Awaited<ReturnType<typeof demoRegistry>>;
let registry: Registry;
beforeAll(async () => {
  registry = await demoRegistry();
});
afterAll(() => registry[Symbol.asyncDispose]());

const asked = { where: { indication: ["stature", "limb-length-discrepancy"] }, by: ["bone"], asOf: null } as const;
const between = { field: "bone", values: ["femur", "tibia"], where: asked.where } as const;

/** Every place, asked as nobody asks it first: each word that it knows is another than the usual one. */
const places: readonly (readonly [name: string, tell: (registry: Registry) => Promise<Told>])[] = [
  ["days at equal gain", (held) => tellDaysAtEqualGain(held, { ...asked, measure: "maturation", landmark: 60 })],
  ["healing curve", (held) => tellHealingCurve(held, { ...asked, rescue: "competing", landmark: 60 })],
  ["gain against plan", (held) => tellGainAgainstPlan(held, { ...asked, toleranceMm: 3, plan: "plannedGainFinalMm" })],
  [
    "complications",
    (held) => tellComplications(held, { ...asked, scheme: "problem-obstacle", endRule: "twelve-months", withoutPinSites: true }),
  ],
  ["proportion", (held) => tellProportion(held, { ...asked, measure: "proportion-span", norm: null })],
  ["distraction", (held) => tellDistractionCourse(held, asked)],
  ["follow-up", (held) => tellFollowUp(held, asked)],
];

describe.each(places)("%s", (_, tell) => {
  test("its own reference tells the place again, word for word and number for number", async () => {
    const told = await tell(registry);
    const again = await tellAgain(registry, told.references[0]?.stamp ?? "");
    const other = again ?? (await tellAgain(registry, told.references[1]?.stamp ?? ""));
    expect(other?.told.sentences).toEqual(told.sentences);
    expect(other?.told.figures.map(({ table }) => table())).toEqual(told.figures.map(({ table }) => table()));
    expect(other?.told.tables).toEqual(told.tables);
    expect(other?.told.references).toEqual(told.references);
  });
});

const all: typeof places = [
  ...places,
  ["incidence", (held) => tellIncidence(held, { ...asked, measure: "complication-return-to-theatre", withoutPinSites: true })],
  ["motion", (held) => tellMotion(held, { ...asked, measure: "motion-knee-flexion.final" })],
  ["alignment", (held) => tellMeasured(held, { ...asked, measure: "alignment-axis-outside" })],
  [
    "side by side",
    (held) =>
      tellSideBySide(held, {
        between,
        measures: ["surgery-to-consolidation", "complication-segments-with-any"],
        adjust: [{ field: "ageAtSurgeryYears", label: "Age" }],
        test: true,
        scheme: null,
        withoutPinSites: true,
        asOf: null,
      }),
  ],
  [
    "several groups",
    (held) =>
      tellSeveralGroups(held, {
        field: "device",
        values: ["magnetic-nail", "monolateral-fixator", "hexapod-circular-fixator"],
        measures: ["surgery-to-consolidation", "gain"],
        where: {},
        test: true,
        asOf: null,
      }),
  ],
];

test.each(all)("every reference that %s prints is answered, and its answer bears the reference", async (_, tell) => {
  const told = await tell(registry);
  expect(new Set(told.references.map(({ stamp }) => stamp)).size).toBe(told.references.length);
  for (const { of, stamp } of told.references) {
    const place = await tellAgain(registry, stamp);
    const compared = await comparedAgain(registry, stamp);
    const stamps = place
      ? place.told.references.map((one) => one.stamp)
      : [compared ? compared.answer.stamp : (await result(registry, stamp))?.stamp];
    expect(stamps, of).toContain(stamp);
  }
});

test("a comparison answers again as it did: values, two cohorts in their order, three groups", async () => {
  const femora = { name: "one", where: { bone: ["femur"] } } as const;
  const tibiae = { name: "other", where: { bone: ["tibia"] } } as const;
  const flagged = { field: "canalVented", values: [true, false], where: {} } as const;
  const options = { adjust: ["ageAtSurgeryYears"], test: true, landmark: 60 } as const;
  for (const between of [flagged, { cohorts: [tibiae, femora] as const }]) {
    const first = await compare(registry, { measure: "surgery-to-consolidation", between, ...options });
    const again = await comparedAgain(registry, first.stamp);
    expect(again?.sameVersion).toBe(true);
    const numbers = ({ a: _, b: __, ...one }: (typeof first.differences)[number]) => one;
    expect(again?.answer.of === "two" ? again.answer.differences.map(numbers) : null).toEqual(first.differences.map(numbers));
    const mix = await caseMix(registry, { between });
    const mixAgain = (await comparedAgain(registry, mix.stamp))?.answer;
    expect(mixAgain?.of === "case-mix" ? mixAgain.balance : null).toEqual(mix.balance);
  }
  const turned = await caseMix(registry, { between: { cohorts: [femora, tibiae] } });
  expect(turned.stamp).not.toBe((await caseMix(registry, { between: { cohorts: [tibiae, femora] } })).stamp);
  const several = await compareSeveral(registry, {
    measure: "gain",
    field: "device",
    values: ["magnetic-nail", "monolateral-fixator", "circular-fixator"],
    where: {},
    test: true,
  });
  expect((await comparedAgain(registry, several.stamp))?.answer).toEqual({ of: "several", ...several });
});

test("a reference of nothing kept here is answered with nothing", async () => {
  expect(await tellAgain(registry, "0123456789ab")).toBeNull();
  expect(await result(registry, "0123456789ab")).toBeNull();
  expect(await comparedAgain(registry, "0123456789ab")).toBeNull();
});
