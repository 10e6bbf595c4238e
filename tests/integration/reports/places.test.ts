import { describe, expect, test } from "vitest";
import { ask, compareSeveral, healing, type MeasureAnswer } from "@/lib/answers";
import { decimals, estimateText, shownText, shownUnit } from "@/lib/charts";
import type { Registry } from "@/lib/registry";
import {
  type PlaceQuestion,
  type Told,
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
import { aFemur, aPerson, rowsOf } from "../answers/made";
import { demoRegistry, emptyRegistry } from "../demo-registry";

const plain = { where: {}, by: [], asOf: null };
const nobody = { where: { surgeryYear: { from: 1971, to: 1972 } }, by: [], asOf: null };

/** Every place, asked as its page asks it first. */
const places: readonly (readonly [name: string, tell: (registry: Registry, question: PlaceQuestion) => Promise<Told>])[] = [
  ["days at equal gain", (registry, question) => tellDaysAtEqualGain(registry, { ...question, measure: "surgery-to-consolidation" })],
  ["healing curve", (registry, question) => tellHealingCurve(registry, { ...question, rescue: "competing" })],
  ["gain against plan", (registry, question) => tellGainAgainstPlan(registry, { ...question, toleranceMm: null, plan: "plannedGainMm" })],
  [
    "complications",
    (registry, question) =>
      tellComplications(registry, { ...question, scheme: "severity", endRule: "healed-and-bearing", withoutPinSites: false }),
  ],
  [
    "incidence",
    (registry, question) => tellIncidence(registry, { ...question, measure: "complication-return-to-theatre", withoutPinSites: true }),
  ],
  [
    "proportion",
    (registry, question) => tellProportion(registry, { ...question, measure: "proportion-tibia-femur", norm: "dry-bone-adults" }),
  ],
  ["motion", (registry, question) => tellMotion(registry, { ...question, measure: "motion-knee-flexion.lost" })],
  ["alignment", (registry, question) => tellMeasured(registry, { ...question, measure: "alignment-axis-outside" })],
  ["distraction", (registry, question) => tellDistractionCourse(registry, question)],
  ["follow-up", (registry, question) => tellFollowUp(registry, question)],
];

describe.each(places)("%s", (_, tell) => {
  test.each([[[]], [["bone"]], [["device", "sex"]], [["gainMm:30/50/80"]]])(
    "split by %j: sentences, figures without a warning, commands",
    async (by) => {
      await using registry = await demoRegistry();
      const told = await tell(registry, { ...plain, by });
      for (const text of [...told.sentences, ...told.cautions, ...told.notes]) {
        expect(text).toMatch(/^["“(]?[A-Z0-9].*[.!]$/);
        expect(text).not.toMatch(/undefined|null|NaN|\.\.$/);
      }
      for (const { svg, caption, csv } of told.figures) {
        for (const width of [880, 328]) expect(svg({ width })).toMatch(/^<svg .*<\/svg>$/s);
        expect(told.references.some(({ stamp }) => caption({ cohort: "all segments" }).includes(`Result reference ${stamp}`))).toBe(true);
        expect(csv()).toMatch(/\r\n$/);
      }
      expect(told.commands.length).toBeGreaterThan(0);
    },
  );

  test("nobody in the cohort: it says so, and nothing is estimated", async () => {
    await using registry = await demoRegistry();
    const told = await tell(registry, nobody);
    expect(told.sentences[0]).toMatch(/^(No segment|Nobody)/);
    for (const { svg } of told.figures) expect(svg({ width: 328 })).toMatch(/^<svg /);
  });
});

describe("sentences are written from the records that the command line answers", () => {
  test("healing curve: the median of the time to consolidation where nothing ends unhealed", async () => {
    await using registry = await demoRegistry();
    const where = { healingStatus: ["healed"] };
    const told = await tellHealingCurve(registry, { ...plain, where, rescue: "counted" });
    const [group] = (await healing(registry, { measure: "time-to-consolidation", where })).groups;
    expect(told.sentences[0]).toContain(`by ${decimals(group?.median.estimate ?? Number.NaN, 0)} days`);
  });

  test("complications: patients with any", async () => {
    await using registry = await demoRegistry();
    const told = await tellComplications(registry, { ...plain, scheme: "severity", endRule: "healed-and-bearing", withoutPinSites: false });
    const [group] = ((await ask(registry, { measure: "complication-patients-with-any" })) as MeasureAnswer).groups;
    expect(told.sentences[0]).toContain(`${group?.share?.x} of ${group?.share?.n}`);
  });

  test("gain against plan: the share within the tolerance", async () => {
    await using registry = await demoRegistry();
    const told = await tellGainAgainstPlan(registry, { ...plain, toleranceMm: 10, plan: "plannedGainMm" });
    const [group] = ((await ask(registry, { measure: "gain-within-10mm" })) as MeasureAnswer).groups;
    expect(told.sentences[0]).toContain(`Within 10 mm of the length planned at start: ${group?.share?.x} of ${group?.share?.n}`);
  });

  test("motion: the mean loss", async () => {
    await using registry = await demoRegistry();
    const told = await tellMeasured(registry, { ...plain, measure: "distraction-rate" });
    const [group] = (await healing(registry, { measure: "distraction-rate" })).groups;
    expect(told.sentences[0]).toContain(
      estimateText(group?.mean ?? { estimate: null, lower: null, upper: null, n: 0, patients: 0 }, "mm/day"),
    );
  });
});

/** Sixty days that don't depend on gain and twenty for each centimetre, for everyone; short gains under the nail, long ones under the fixator. */
function trap() {
  const segment = Array.from({ length: 48 }, (_, i) => {
    const cm = (i < 24 ? 2 : 6) + (i % 6) * 0.4;
    return aFemur(i + 1, {
      device: i < 24 ? "magnetic-nail" : "monolateral-fixator",
      gainMm: cm * 10,
      distractionEndDay: 7 + Math.round(cm * 10),
      consolidationDay: Math.round(60 + 20 * cm + ((i * 7) % 11) - 5),
    });
  });
  return rowsOf({ person: segment.map((_, i) => aPerson(i + 1)), segment });
}

test("how soon an event came has no class, so nothing of a scheme is said beside it", async () => {
  await using registry = await demoRegistry();
  const notes = async (measure: string) => ((await ask(registry, { measure })) as MeasureAnswer).notes.map(({ code }) => code);
  for (const measure of ["complication-incidence", "complication-return-to-theatre", "operations-per-segment"])
    expect(await notes(measure), measure).not.toContain("from-memory");
  expect(await notes("complication-worst")).toContain("from-memory");
});

describe("two groups on one line, with unlike gains", () => {
  test("the place says that no difference is shown at equal gain, and the caution stands beside it", async () => {
    await using registry = await emptyRegistry();
    await registry.commit(trap(), { at: "2021-01-01T00:00:00Z" });
    const told = await tellDaysAtEqualGain(registry, { ...plain, by: ["device"], measure: "surgery-to-consolidation" });
    expect(told.sentences[0]).toMatch(
      /^No difference is shown at equal gain: on straight lines Magnetic nail less Monolateral fixator is −?\d+\.\d days/,
    );
    expect(told.cautions.join(" ")).toContain("An index falls with gain by arithmetic");
    expect(told.sentences.at(-1)).toMatch(/^The index by itself, Magnetic nail less Monolateral fixator: \d+\.\d days\/cm/);
  });

  test("side by side says the same, p only when it is asked for, and names the splits looked at", async () => {
    await using registry = await emptyRegistry();
    await registry.commit(trap(), { at: "2021-01-01T00:00:00Z" });
    const between = { field: "device", values: ["magnetic-nail", "monolateral-fixator"], where: {} } as const;
    const asked = { between, measures: ["surgery-to-consolidation", "gain"], adjust: [], scheme: null, asOf: null };
    const told = await tellSideBySide(registry, { ...asked, test: false });
    expect(told.sentences.join(" ")).toMatch(/days at equal gain, Magnetic nail over Monolateral fixator: .*, so no difference is shown/);
    expect(JSON.stringify(told.tables) + told.sentences.join(" ")).not.toMatch(/\bp (below|0)|Holm/);
    const tested = await tellSideBySide(registry, { ...asked, test: true });
    expect(tested.sentences.join(" ")).toMatch(/Holm’s rule goes over 2 p values, of the 2 outcomes ticked\./);
    // a ratio through nothing finds a difference on one line: its p is said to be its own
    expect(tested.sentences.join(" ")).toMatch(/; of the ratio by itself p [^;]*, which the straight lines don’t bear out\./);
    expect(told.sentences.at(-1)).toMatch(/split/);
  });

  test("a covariate known only later is refused with its reason", async () => {
    await using registry = await emptyRegistry();
    await registry.commit(trap(), { at: "2021-01-01T00:00:00Z" });
    const between = { field: "device", values: ["magnetic-nail", "monolateral-fixator"], where: {} } as const;
    const told = await tellSideBySide(registry, {
      between,
      measures: ["surgery-to-consolidation"],
      adjust: [{ field: "gainMm", label: "Gain" }],
      test: false,
      scheme: null,
      asOf: null,
    });
    expect(told.sentences.join(" ")).toContain("no adjusted estimate is given");
    expect(told.cautions.join(" ")).toContain("known only after the clock’s start");
  });
});

describe("three groups or more", () => {
  const asked = { field: "device", values: ["magnetic-nail", "monolateral-fixator", "hexapod-circular-fixator"], where: {} } as const;

  test("figure, table and sentence show the records that the command line answers; p only when it is asked for", async () => {
    await using registry = await demoRegistry();
    const told = await tellSeveralGroups(registry, { ...asked, measures: ["gain"], test: false, asOf: null });
    const [nail] = (await compareSeveral(registry, { ...asked, measure: "gain" })).differences;
    const estimate = shownText(nail?.estimate ?? Number.NaN, shownUnit("mm"));
    expect(told.sentences[1]).toContain(`Magnetic nail ${estimate} mm (95 % CI `);
    expect(told.tables.find(({ caption }) => caption === "How they differ")?.table.rows[0]?.slice(1, 3)).toEqual([
      "Magnetic nail",
      `${estimate} mm`,
    ]);
    expect(told.figures[0]?.table().rows).toHaveLength(3);
    expect(JSON.stringify(told.tables) + told.sentences.join(" ")).not.toMatch(/\bp (below|0)|Holm/);
    const tested = await tellSeveralGroups(registry, { ...asked, measures: ["gain", "gain-error"], test: true, asOf: null });
    expect(tested.sentences.join(" ")).toMatch(/over all groups p .*Holm’s rule goes over 2 p values, of the 2 outcomes ticked\./);
  });

  test("an outcome that fewer than three groups have says so", async () => {
    await using registry = await emptyRegistry();
    await registry.commit(trap(), { at: "2021-01-01T00:00:00Z" });
    const told = await tellSeveralGroups(registry, { ...asked, measures: ["gain"], test: true, asOf: null });
    expect(told.sentences[1]).toBe("Gain: fewer than three groups were measured, so they can’t be compared at once.");
  });
});

describe("a norm beside proportions", () => {
  test("isn't shown where it doesn't fit everyone, and the reason is said", async () => {
    await using registry = await demoRegistry();
    const told = await tellProportion(registry, { ...plain, measure: "proportion-tibia-femur", norm: "standing-film-adults" });
    expect(told.cautions.join(" ")).toMatch(/isn’t shown for All segments: \d+ of \d+ are/);
    expect(told.figures[0]?.table().rows[0]?.at(-1)).toBe("–");
  });

  test("that was never published for the proportion is refused", async () => {
    await using registry = await demoRegistry();
    const told = await tellProportion(registry, { ...plain, measure: "proportion-span", norm: "dry-bone-adults" });
    expect(told.cautions).toContain("No norm of dry bone adults is published for this proportion, so none is shown.");
  });
});
