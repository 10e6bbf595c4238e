import { expect, test } from "vitest";
import { answerOf, captionOf, drawSvg, equalGainText, estimateText, layoutHealing, tableOf } from "@/lib/charts";
import { emptyGroup, inventedGroup, inventedMarks, inventedRecord } from "./invented";

const femur = inventedGroup("Femur & <thigh>", inventedMarks(90));
const mean = { estimate: 44.04, lower: 41.66, upper: 46.42, n: 52, patients: 40 };
const tibia = inventedGroup("Tibia", inventedMarks(60, { seed: 3, middle: 45 }), { mean, ended: 2, segments: 64 });
const record = inventedRecord([femur, tibia, emptyGroup("Humerus")]);

const textOf = (svg: string) =>
  [...svg.matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map(([, text]) =>
    (text ?? "").replace(/&(amp|lt|gt);/g, (_, name: string) => ({ amp: "&", lt: "<", gt: ">" })[name] ?? ""),
  );

test("the figure prints each group's mean in the one form, and its counts", () => {
  const text = textOf(drawSvg(layoutHealing(record)));
  for (const group of record.groups) {
    expect(text).toContain(group.label);
    expect(text).toContain(estimateText(group.mean, "days/cm"));
    expect(text.some((line) => line.startsWith(`${group.segments} segments in ${group.patients} patients: `))).toBe(true);
  }
});

test("the counts printed over a group add up to its segments", () => {
  for (const line of textOf(drawSvg(layoutHealing(record))).filter((text) => /^\d+ segments in/.test(text))) {
    const [all, ...parts] = [...line.replaceAll(/\([^)]*\)/g, "").matchAll(/\b\d+\b(?! patients)/g)].map(Number);
    expect(parts.reduce((a, b) => a + b, 0)).toBe(all);
  }
});

test("table, figure and answer say the same mean", () => {
  const table = tableOf(record);
  const cell = (row: number, id: string) => table.rows[row]?.[table.columns.findIndex((column) => column.id === id)];
  expect(cell(1, "mean")).toBe("44.0");
  expect(cell(1, "mean-interval")).toBe("41.7 to 46.4");
  expect(answerOf(record, "days/cm")).toContain("Tibia 44.0 days/cm (95 % CI 41.7 to 46.4; 52 segments in 40 patients)");
  expect(cell(2, "mean")).toBe("–");
});

test("days at equal gain stand in the table, and in a sentence that names at most three groups", () => {
  const table = tableOf(record);
  const at = table.columns.findIndex((column) => column.id === "equal-gain");
  expect(table.columns[at]).toEqual({ id: "equal-gain", head: "At 51 mm", unit: "days", align: "end" });
  expect(table.rows.map((row) => [row[at], row[at + 1]])).toEqual([
    ["160", "151 to 171"],
    ["160", "151 to 171"],
    ["–", "–"],
  ]);
  const group = (label: string, days: number) => ({ label, daysAtMedianGain: { gainMm: 51.2, days, lower: null, upper: null } });
  expect(equalGainText([group("A", 150)])).toBe("With the unhealed in, at the cohort’s median gain of 51 mm: 150 days (no interval).");
  expect(equalGainText([group("A", 150), group("B", 140), group("C", 170), group("D", 160)])).toBe(
    "With the unhealed in, at the cohort’s median gain of 51 mm, the fewest days are those of B, 140 days (no interval), the most those of C, 170 days (no interval).",
  );
  expect(equalGainText([emptyGroup("A")])).toBeNull();
});

test("the table's counts add up in every row", () => {
  const table = tableOf(record);
  const at = (id: string) => table.columns.findIndex((column) => column.id === id);
  for (const row of table.rows) {
    const sum = ["measured", "censored", "ended", "excluded"].reduce((total, id) => total + Number(row[at(id)]), 0);
    expect(sum).toBe(Number(row[at("segments")]));
  }
});

test("the answer says how many unhealed are not in the means", () => {
  const censored = (femur.censored ?? 0) + (tibia.censored ?? 0);
  const analysed = (femur.healed ?? 0) + (tibia.healed ?? 0) + censored + 2;
  expect(answerOf(record, "days/cm")).toContain(`${censored} not healed at the last film and 2 ended unhealed of ${analysed} analysed`);
  const nobody = { ...emptyGroup("All segments"), segments: 0, patients: 0, excluded: {} };
  for (const none of [[], [nobody]]) expect(answerOf(inventedRecord(none), "days/cm")).toBe("No segment in this cohort.");
  expect(answerOf(inventedRecord([emptyGroup("Humerus")]), "days/cm")).toBe(
    "No healed segment to answer with: of 3 segments, 0 not healed and 3 left out.",
  );
});

test("a mean of one or two patients is no end of a range, and their figure shows values alone", () => {
  const group = (label: string, estimate: number, large: boolean) =>
    inventedGroup(label, inventedMarks(8), {
      mean: { estimate, lower: large ? estimate - 1 : null, upper: large ? estimate + 1 : null, n: 8, patients: large ? 8 : 2 },
    });
  const few = inventedRecord([group("A", 20, false), group("B", 30, true), group("C", 40, true), group("D", 90, false)]);
  const answer = answerOf(few, "days/cm");
  expect(answer).toContain("Of 4 groups, 2 with patients enough for an interval: the lowest mean is that of B, 30.0 days/cm");
  expect(answer).toContain("the highest that of C, 40.0 days/cm");
  const labels = layoutHealing(few).marks.flatMap((mark) => ("label" in mark && mark.label ? [mark.label] : []));
  expect(labels.filter((label) => /: (mean|quartiles) /.test(label)).map((label) => label[0])).toEqual(["B", "B", "C", "C"]);
});

test("a ratio of sums, days over cm, stands in no table of days", () => {
  const ids = (unit: "days" | "months/cm") => tableOf(record, unit).columns.map(({ id }) => id);
  expect(ids("days")).not.toContain("ratio-of-sums");
  expect(ids("days")).not.toContain("ratio-of-sums-interval");
  expect(ids("months/cm")).toContain("ratio-of-sums");
});

test("the caption states cohort, n, definition, interval, film interval, batch and reference", () => {
  const caption = captionOf(record, { cohort: "bone femur or tibia", unit: "months/cm" });
  for (const part of [
    "cohort: bone femur or tibia",
    `${femur.segments + tibia.segments + 3} segments`,
    record.definition.sentence,
    "95 % interval, clustered by patient",
    "Tibia 41 days",
    "1 month is 30.4375 days",
    "Data to 2024 Q3, batch 3",
    "Result reference 0a1b2c3d4e5f",
  ])
    expect(caption).toContain(part);
});

test("the caption names no interval where no group is large enough for one", () => {
  const groups = record.groups.map((group) => ({ ...group, mean: { ...group.mean, lower: null, upper: null } }));
  expect(captionOf(record)).toContain("Median and quartiles with the unhealed in");
  expect(captionOf({ ...record, groups })).not.toMatch(/interval, clustered|quartiles/);
});
