import { expect, test } from "vitest";
import { distributionFigure } from "@/lib/charts";
import { inventedDistribution, inventedNumbers, inventedRows } from "./invented-distribution";

const few = { code: "few-patients", text: "Few patients: the interval rests on 3 degrees of freedom." };
const clustered = { code: "clustered", text: "Clustered by patient (CR2, df 12.1)." };
const group = (label: string, notes: readonly { code: string; text: string }[]) => inventedNumbers(label, inventedRows(8), { notes });
const notesIn = (labels: readonly (readonly [label: string, notes: readonly { code: string; text: string }[]])[]) =>
  distributionFigure.caption(inventedDistribution(labels.map(([label, notes]) => group(label, notes))));

test("a note that some groups bear is said once, with their names", () => {
  const caption = notesIn([
    ["Nail", [few, clustered]],
    ["Frame", []],
    ["Plate", [few]],
  ]);
  expect(caption).toContain("Nail, Plate: Few patients: the interval rests on 3 degrees of freedom. ");
  expect(caption.match(/Few patients/g)).toHaveLength(1);
});

test("a note that all groups bear is said without names, and clustering is said of all in the words of the figure", () => {
  const caption = notesIn([
    ["Nail", [few, clustered]],
    ["Frame", [few, clustered]],
  ]);
  expect(caption).toContain(". Few patients: the interval rests on 3 degrees of freedom. ");
  expect(caption).not.toContain("df 12.1");
  expect(caption).toContain("clustered by patient (CR2, Satterthwaite)");
});

test("where marks are drawn together the caption says that their names are left out", () => {
  const record = inventedDistribution([group("Nail", [])]);
  expect(distributionFigure.caption(record, { crowded: true })).toContain("drawn together, without their names. ");
  expect(distributionFigure.caption(record)).not.toContain("drawn together");
});
