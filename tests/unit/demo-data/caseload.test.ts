import { expect, test } from "vitest";
import { dayOf, groupedBy, rowsOf } from "./read";

const rows = rowsOf("seven-years.csv");
const persons = groupedBy(rows, (row) => row.local_id ?? "");
const share = (part: number) => part / rows.length;
const count = (fits: (row: (typeof rows)[number]) => boolean) => rows.filter(fits).length;

test("480 segments of 260 persons, operated on from 2018 to 2024", () => {
  expect(rows).toHaveLength(480);
  expect(persons.size).toBe(260);
  expect(new Set(rows.map((row) => row.surgery_day?.slice(0, 4)))).toEqual(
    new Set(["2018", "2019", "2020", "2021", "2022", "2023", "2024"]),
  );
});

test("a third of the persons had both sides lengthened for stature", () => {
  const bilateral = [...persons.values()].filter((own) => {
    const sides = (bone: string) => new Set(own.filter((row) => row.bone === bone).map((row) => row.side)).size;
    return own[0]?.indication === "stature" && (sides("femur") === 2 || sides("tibia") === 2);
  });
  expect(bilateral.length / persons.size).toBeGreaterThan(0.3);
  expect(bilateral.length / persons.size).toBeLessThan(0.37);
  expect(bilateral.filter((own) => new Set(own.map((row) => row.bone)).size === 2).length).toBeGreaterThan(20);
});

test("every device, every bone and every arrangement of the sides is there", () => {
  expect(new Set(rows.map((row) => row.device)).size).toBe(11);
  expect(share(count((row) => row.device === "magnetic-nail"))).toBeGreaterThan(0.5);
  expect(new Set(rows.map((row) => row.bone))).toEqual(new Set(["femur", "tibia", "humerus", "forearm", "foot-ray", "hand-ray"]));
  expect(count((row) => row.procedure === "transport")).toBeGreaterThan(5);
  expect(count((row) => row.osteotomy_levels === "2")).toBeGreaterThan(1);
  expect(new Set(rows.map((row) => row.arrangement).filter((code) => code !== "")).size).toBe(5);
});

test("a key names one row: person, bone, side and day of surgery", () => {
  expect(new Set(rows.map((row) => [row.local_id, row.bone, row.side, row.surgery_day].join())).size).toBe(rows.length);
});

test("nothing is recorded after the sheet was closed on 31 March 2025", () => {
  const days = rows.flatMap((row) => Object.entries(row).filter(([header, cell]) => /(?<!per)_day(_\d)?$/.test(header) && cell !== ""));
  expect(days.length).toBeGreaterThan(3000);
  expect(days.filter(([, cell]) => !/^\d{4}-\d\d-\d\d$/.test(cell) || dayOf(cell) > dayOf("2025-03-31"))).toEqual([]);
});

test("each way in which a segment may end is there", () => {
  const rescued = (row: (typeof rows)[number]) =>
    row.rescue_day !== "" || [row.purpose_1, row.purpose_2, row.purpose_3].includes("regenerate-healing");
  expect(count((row) => rescued(row) && row.consolidation_day !== "")).toBeGreaterThan(5);
  expect(count((row) => rescued(row) && row.consolidation_day === "")).toBeGreaterThan(1);
  expect(count((row) => ["abandoned", "nonunion", "amputated"].includes(row.end_state ?? ""))).toBe(7);
  expect(count((row) => row.consolidation_day === "" && row.full_weight_bearing_day !== "")).toBeGreaterThan(10);
  expect(count((row) => row.distraction_end_day === "" && row.consolidation_day === "" && row.last_film_day !== "")).toBeGreaterThan(4);
  expect(count((row) => row.gain_mm === "0")).toBe(3);
  expect(count((row) => Number(row.gain_mm) > 0 && Number(row.gain_mm) < 10)).toBe(4);
  expect(count((row) => row.plan_change_reason !== "")).toBeGreaterThan(30);
});

test("body measures stand before and after, complications with their handling, and permission for each use", () => {
  expect(count((row) => row.stature_mm_before !== "" && row.stature_mm_final !== "")).toBeGreaterThan(200);
  expect(count((row) => row.sitting_height_mm_final !== "" && row.arm_span_mm_final !== "")).toBeGreaterThan(100);
  expect(count((row) => row.event_type_1 !== "" && row.handling_1 !== "")).toBeGreaterThan(150);
  expect(new Set(rows.map((row) => row.permitted_use))).toContain("withdrawn");
});
