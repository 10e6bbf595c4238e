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

function group(label: string, all: AgreementGroup["marks"], more: Partial<AgreementGroup> = {}): AgreementGroup {
  const patients = Math.ceil(all.length / 1.6);
  return {
    label,
    segments: all.length + 2,
    patients: patients + 1,
    n: all.length,
    excluded: { "no-target": 2 },
    bias: { estimate: -0.91, lower: -1.82, upper: 0.01, n: all.length, patients },
    limits: { lower: -9.6, upper: 7.8 },
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
      limits: { lower: -12.1, upper: 14.5 },
    }),
    group("Plate", [], { bias: none, limits: null }),
  ]),
  "limits-close-together": record([group("All segments", marks(40), { limits: { lower: -1.3, upper: -0.5 } })]),
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

test("bias and limits stand beside the field, and no limits without patients enough", () => {
  const texts = textsIn(agreementFigure.layout(records["one-group"] as AgreementRecord));
  expect(["−0.9", "−9.6", "7.8"].every((text) => texts.includes(text))).toBe(true);
  const few = allText(agreementFigure.layout(records["twelve-segments-no-limits"] as AgreementRecord));
  expect(few).toContain("fewer than 20 patients: the differences themselves, no limits");
  expect(few).not.toContain("limits of agreement");
});
