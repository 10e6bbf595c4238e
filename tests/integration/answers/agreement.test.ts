import { describe, expect, test } from "vitest";
import { complicationMatrix } from "@/lib/answers";
import { tellComplications } from "@/lib/reports";
import { weightedKappa } from "@/lib/stats";
import { demoRegistry, emptyRegistry } from "../demo-registry";
import { aFemur, aPerson, person, row, rowsOf } from "./made";

/** Femora whose events the surgeon classed: what was recorded, beside facts that make a class. */
async function classed(events: readonly object[]) {
  const registry = await emptyRegistry();
  const numbers = events.map((_, i) => i + 1);
  await registry.commit(
    rowsOf({
      person: numbers.map((i) => aPerson(i)),
      segment: numbers.map((i) => aFemur(i, { eventsLookedFor: "fully", gainMm: 50, plannedGainMm: 50, consolidationDay: 150 })),
      event: events.map((held, i) =>
        row("event", {
          person: person(i + 1),
          bone: "femur",
          side: "left",
          surgeryDay: 0,
          eventType: "equinus",
          eventNumber: 1,
          onsetDay: 30,
          ...held,
        }),
      ),
    }),
    { at: "2021-01-01T00:00:00Z" },
  );
  return registry;
}

const operated = { handling: "operation-under-anaesthesia" };

describe("the surgeon's class beside the derived one", () => {
  test("recorded down, derived across; what was not classed is in neither", async () => {
    await using registry = await classed([
      { classSeverity: "i" },
      { classSeverity: "ii" },
      { classSeverity: "ii", ...operated },
      { classSeverity: "iiib", sequela: "permanent" },
      { ...operated },
    ]);
    const [group] = (await complicationMatrix(registry, { scheme: "severity" })).groups;
    expect(group?.agreement).toMatchObject({ of: "event", n: 4, patients: 4, alike: 3 });
    expect(group?.agreement?.table).toEqual([
      [1, 0, 0, 0],
      [1, 1, 0, 0],
      [0, 0, 0, 0],
      [0, 0, 0, 1],
    ]);
    const alone = weightedKappa({ first: [0, 1, 1, 3], second: [0, 0, 1, 3], patient: [1, 2, 3, 4], classes: 4, seed: 1 });
    expect(group?.agreement?.kappa).toEqual({ estimate: alone.estimate, lower: null, upper: null });
    // each scheme is held against its own field
    expect((await complicationMatrix(registry, { scheme: "surgical" })).groups[0]?.agreement).toBeNull();
  });

  test("of a scheme that classes treatments, the heaviest recorded is held against the treatment's", async () => {
    await using registry = await classed([
      { classTripleContract: "ii", ...operated },
      { classTripleContract: "i", goalMissed: true },
    ]);
    const [group] = (await complicationMatrix(registry, { scheme: "triple-contract" })).groups;
    expect(group?.agreement).toMatchObject({ of: "segment", n: 2, alike: 1 });
    expect(group?.agreement?.table[0]?.[2]).toBe(1);
  });

  test("stands on the place in words and as a table, with the interval of its patients", async () => {
    await using registry = await demoRegistry();
    const asked = { where: {}, by: [], asOf: null, endRule: "healed-and-bearing", withoutPinSites: false } as const;
    const told = await tellComplications(registry, { ...asked, scheme: "severity" });
    const [group] = (await complicationMatrix(registry, { scheme: "severity" })).groups;
    const { alike, n, kappa } = group?.agreement ?? { alike: 0, n: 0, kappa: { estimate: 0, lower: 0, upper: 0 } };
    expect(told.sentences.join(" ")).toContain(
      `${alike} of ${n} events classed alike, weighted kappa ${kappa.estimate?.toFixed(2)} (95 % CI`,
    );
    const table = told.tables.find(({ caption }) => caption.startsWith("The surgeon’s class"));
    expect(table?.table.rows.flatMap((cells) => cells.slice(1).map(Number)).reduce((a, b) => a + b, 0)).toBe(n);
  });
});

test("the triple contract stands with its time rule and without it", async () => {
  await using registry = await demoRegistry();
  const asked = { where: {}, by: ["bone"], asOf: null, endRule: "healed-and-bearing", withoutPinSites: false } as const;
  const told = await tellComplications(registry, { ...asked, scheme: "triple-contract" });
  const rows = told.tables.find(({ caption }) => caption.startsWith("Treatments by class"))?.table.rows ?? [];
  const above = (way: string) =>
    rows.filter(([held]) => held === way).reduce((sum, cells) => sum + cells.slice(4).reduce((a, b) => a + Number(b), 0), 0);
  expect(above("with its time rule")).toBeGreaterThan(above("without it"));
  expect(told.sentences.join(" ")).toContain(`${above("with its time rule")} of`);
  expect(told.sentences.join(" ")).toContain(`with the time rule, ${above("without it")} without it.`);
});
