import { expect, test } from "vitest";
import { type AgreementGroup, type AgreementRecord, agreementFigure } from "@/lib/charts";
import { allText, figureCases, inventedSource, labelsIn, textsIn } from "./figure-cases";
import { invented } from "./invented";

function marks(n: number, seed = 4) {
  const next = invented(seed);
  return Array.from({ length: n }, (_, index) => {
    const second = Math.round(30 + next() * 50);
    return { segment: index + 1, first: Math.round(second + (next() + next() + next() - 1.6) * 9), second };
  });
}

/** Limits of agreement with intervals of ± a half. */
function limits(lower: number, upper: number, half = 1.3): NonNullable<AgreementGroup["limits"]> {
  const around = (estimate: number) => ({ estimate, lower: estimate - half, upper: estimate + half });
  return { lower: around(lower), upper: around(upper) };
}

function group(label: string, all: AgreementGroup["marks"], more: Partial<AgreementGroup> = {}): AgreementGroup {
  const patients = Math.ceil(all.length / 1.6);
  return {
    label,
    segments: all.length + 2,
    patients: patients + 1,
    n: all.length,
    excluded: { "no-target": 2 },
    bias: { estimate: -0.91, lower: -1.82, upper: 0.01, n: all.length, patients },
    limits: limits(-9.6, 7.8),
    marks: all,
    ...more,
  };
}

const none = { estimate: null, lower: null, upper: null, n: 0, patients: 0 };
const record = (groups: readonly AgreementGroup[]): AgreementRecord => ({
  ...inventedSource,
  definition: { title: "Gain less plan", sentence: "gain on film at the end of distraction against the plan at the start" },
  by: groups.length > 1 ? ["device"] : [],
  unit: "mm",
  between: ["gained", "planned at start"],
  groups,
});

const records: Readonly<Record<string, AgreementRecord>> = {
  "one-group": record([group("All segments", marks(140))]),
  "three-groups-one-empty": record([
    group("Nail", marks(90, 8)),
    group("Frame", marks(70, 9), {
      bias: { estimate: 1.2, lower: -0.6, upper: 3, n: 70, patients: 44 },
      limits: limits(-12.1, 14.5, 2.4),
    }),
    group("Plate", [], { bias: none, limits: null }),
  ]),
  "limits-close-together": record([group("All segments", marks(40), { limits: limits(-1.3, -0.5, 0.2) })]),
  "twelve-segments-no-limits": record([group("All segments", marks(12), { limits: null })]),
  "one-patient": record([
    group("All segments", marks(2), { limits: null, bias: { estimate: -1, lower: null, upper: null, n: 2, patients: 1 } }),
  ]),
  nothing: record([]),
};

figureCases(agreementFigure, records, { unpictured: { "5 000 segments": record([group("All segments", marks(5000))]) } });

test.each([12, 5000])("each of %i segments is a mark that says both readings and their difference", (n) => {
  const all = marks(n);
  const said = labelsIn(agreementFigure.layout(record([group("All", all)]))).filter((label) => label.startsWith("gained "));
  expect(said.sort()).toEqual(
    all
      .map(
        ({ first, second }) =>
          `gained ${first} mm, planned at start ${second} mm, difference ${String(first - second).replace("-", "−")} mm`,
      )
      .sort(),
  );
});

test("bias and both limits lie each in the band of its own interval, and stand in the table with it", () => {
  const one = group("All segments", marks(140));
  const { marks: drawn } = agreementFigure.layout(record([one]));
  const lines = drawn.filter((mark) => mark.mark === "rule" && mark.ink === "ink" && mark.label !== undefined);
  const bands = drawn.filter((mark) => mark.mark === "band" && mark.width > 100);
  const heights = lines.flatMap((mark) => (mark.mark === "rule" ? [mark.y1] : [])).sort((a, b) => a - b);
  const spans = bands.flatMap((mark) => (mark.mark === "band" ? [[mark.y, mark.height] as const] : [])).sort(([a], [b]) => a - b);
  expect(heights).toHaveLength(3);
  const places = spans.map(([top, height], index) => ((heights[index] ?? 0) - top) / height);
  // intervals of ± 1.3 about the limits, −1.82 to 0.01 about a bias of −0.91
  expect(places.map((place) => place.toFixed(2))).toEqual(["0.50", "0.50", "0.50"]);
  const { columns, rows } = agreementFigure.table(record([one]));
  const cells = Object.fromEntries(columns.map(({ id }, at) => [id, rows[0]?.[at]]));
  expect(cells).toMatchObject({ "limit-lower": "−9.6", "limit-lower-interval": "−10.9 to −8.3", "limit-upper-interval": "6.5 to 9.1" });
});

test("median and nine in ten of the differences stand in head and table, where the record has them", () => {
  const skewed = record([group("All segments", marks(140), { spread: { p5: -13.04, median: -0.5, p95: 1.5 } })]);
  expect(allText(agreementFigure.layout(skewed))).toContain("median −0.5 mm; nine in ten from −13.0 to 1.5 mm");
  const { columns, rows } = agreementFigure.table(skewed);
  expect(rows[0]?.[columns.findIndex(({ id }) => id === "spread")]).toBe("−13.0 to 1.5");
  expect(allText(agreementFigure.layout(record([group("All segments", marks(140))])))).not.toContain("nine in ten");
});

test("bias and limits stand beside the field, and no limits without patients enough", () => {
  const texts = textsIn(agreementFigure.layout(records["one-group"] as AgreementRecord));
  expect(["−0.9", "−9.6", "7.8"].every((text) => texts.includes(text))).toBe(true);
  const few = allText(agreementFigure.layout(records["twelve-segments-no-limits"] as AgreementRecord));
  expect(few).toContain("fewer than 20 patients: the differences themselves, no limits");
  expect(few).not.toContain("limits of agreement");
});
