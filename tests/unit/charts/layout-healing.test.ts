import { expect, test } from "vitest";
import { drawSvg, type HealingRecordForFigure, layoutHealing, type Mark } from "@/lib/charts";
import { labelsIn } from "./figure-cases";
import { emptyGroup, inventedGroup, inventedMarks, inventedRecord } from "./invented";

const femur = inventedGroup("Femur", inventedMarks(280));
const tibia = inventedGroup("Tibia", inventedMarks(200, { seed: 11, middle: 44 }));

/** Records of every size the page must stand: the pictures beside this test are the review of the drawing. */
const records: Readonly<Record<string, HealingRecordForFigure>> = {
  "twelve-segments": inventedRecord([inventedGroup("All segments", inventedMarks(12))]),
  "two-groups-and-an-empty-one": inventedRecord([femur, tibia, emptyGroup("Humerus")]),
  "one-patient": inventedRecord([
    inventedGroup(
      "All segments",
      inventedMarks(2).map((mark) => ({ ...mark, status: "healed", rescued: false })),
      {
        patients: 1,
        mean: { estimate: 31.2, lower: null, upper: null, n: 2, patients: 1 },
      },
    ),
  ]),
  "upper-quartile-not-reached": inventedRecord([
    inventedGroup("All segments", inventedMarks(40), { quartiles: { lower: 30, upper: null } }),
  ]),
  "far-values": inventedRecord([
    inventedGroup(
      "All segments",
      [...inventedMarks(98), ...far(240), ...far(410)].map((mark, index) => ({ ...mark, segment: index })),
    ),
  ]),
  nothing: inventedRecord([]),
};

function far(value: number) {
  return [{ segment: 0, status: "healed", rescued: false, value, gainMm: 12 }];
}

for (const [name, record] of Object.entries(records))
  for (const width of [880, 328])
    test(`${name} at ${width} px looks as it did`, async () => {
      const svg = drawSvg(layoutHealing(record, { width, unit: width === 880 ? "days/cm" : "months/cm" }));
      await expect(svg).toMatchFileSnapshot(`snapshots/healing-${name}-${width}.svg`);
    });

const labels = (marks: readonly Mark[]) => labelsIn({ marks });
const ofSegments = (all: readonly string[]) => all.filter((label) => label.endsWith("mm gained"));

test.each([12, 480, 5000])("each of %i segments is a mark that says its value", (n) => {
  const record = inventedRecord([inventedGroup("All segments", inventedMarks(n))]);
  const said = ofSegments(labels(layoutHealing(record).marks));
  expect(said).toHaveLength(n);
  const values = said.map((label) => /([\d.]+) days\/cm/.exec(label)?.[1]).sort();
  expect(values).toEqual(record.groups.flatMap((group) => group.marks.map((mark) => mark.value.toFixed(1))).sort());
});

test("no mark leaves the drawing, at any width", () => {
  for (const record of Object.values(records))
    for (const width of [240, 328, 880, 1200]) {
      const scene = layoutHealing(record, { width });
      for (const mark of scene.marks)
        if (mark.mark === "symbol") {
          expect(mark.x).toBeGreaterThanOrEqual(0);
          expect(mark.x).toBeLessThanOrEqual(width);
          expect(mark.y).toBeGreaterThanOrEqual(0);
          expect(mark.y).toBeLessThanOrEqual(scene.height);
        }
    }
});

test("the unhealed stand apart, below the healed, and are said to be unhealed", () => {
  const scene = layoutHealing(inventedRecord([tibia]));
  const healed = scene.marks.flatMap((mark) => (mark.mark === "symbol" && mark.label?.includes("mm gained") ? [mark.y] : []));
  const unhealed = scene.marks.filter((mark) => mark.mark === "path" && mark.label?.includes("mm gained"));
  expect(unhealed).toHaveLength(tibia.censored ?? -1);
  for (const mark of unhealed)
    if (mark.mark === "path") expect(Number(/^M\S+ (\S+)V/.exec(mark.d)?.[1])).toBeGreaterThan(Math.max(...healed));
  for (const mark of unhealed) expect("label" in mark && mark.label).toMatch(/more than .* not healed at last film/);
});

test("rescued bones differ by shape, not by colour alone", () => {
  const scene = layoutHealing(inventedRecord([femur]));
  const shapes = scene.marks.flatMap((mark) =>
    mark.mark === "symbol" && mark.label ? [[mark.label.includes("after further"), mark.shape]] : [],
  );
  expect(new Set(shapes.filter(([rescued]) => rescued).map(([, shape]) => shape))).toEqual(new Set(["triangle"]));
  expect(shapes.filter(([rescued, shape]) => rescued && shape === "triangle")).toHaveLength(femur.rescued ?? -1);
  expect(shapes.some(([rescued, shape]) => !rescued && shape === "triangle")).toBe(false);
});

test("clocks that don't end at consolidation measure, and nothing heals under them", () => {
  const { healed, censored: _, ended: __, rescued: ___, ...rest } = femur;
  const record = inventedRecord([{ ...rest, n: healed ?? 0, marks: femur.marks.map((mark) => ({ ...mark, rescued: false })) }]);
  expect(drawSvg(layoutHealing(record))).not.toMatch(/healed/);
});

test("a width below 240 px is refused", () => {
  expect(() => layoutHealing(inventedRecord([femur]), { width: 100 })).toThrow(
    new RangeError("layoutHealing requires a width of at least 240 px, received 100"),
  );
});

test("the record is not changed", () => {
  const frozen = structuredClone(inventedRecord([femur]));
  layoutHealing(deepFreeze(frozen));
  expect(frozen).toEqual(inventedRecord([femur]));
});

function deepFreeze<T>(value: T): T {
  if (typeof value === "object" && value !== null) for (const inner of Object.values(Object.freeze(value))) deepFreeze(inner);
  return value;
}
