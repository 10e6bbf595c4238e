import { expect, test } from "vitest";
import { fieldsOf, fold, snake, tableNames } from "@/lib/codebook";
import { matchSheet, targetId } from "@/lib/intake";
import { aliasIndex, wordsOf } from "@/lib/intake/match/aliases";
import { headerParts } from "@/lib/intake/match/header-unit";
import { sheetOf } from "./load";

const named = "Hospital No;Bone;Side;Date of surgery";
const matched = (header: string, beside = named, mapping = {}) => {
  const sheet = sheetOf(`${beside};${header}\n${"x;".repeat(beside.split(";").length)}y`);
  const { columns, kind } = matchSheet(sheet, { columns: {}, units: {}, ...mapping });
  const column = columns.at(-1);
  return { kind, field: column?.target ? targetId(column.target) : null, unit: column?.unit ?? null, dropped: column?.dropped ?? null };
};

test.each([
  ["Gain (mm)", "gain", "mm"],
  ["Gain [cm]", "gain", "cm"],
  ["Gain, cm", "gain", "cm"],
  ["Gain in cm", "gain", "cm"],
  ["Gain cm", "gain", "cm"],
  ["Latency, days", "latency", "days"],
  ["Consolidation in months", "consolidation", "months"],
  ["Days to consolidation", "consolidation", "days"],
  ["Rate (mm/day)", "rate", "mm/day"],
  ["HI (days/cm)", "hi", "days/cm"],
  ["Knee flexion (°)", "knee flexion", "deg"],
  ["Hospital number", "hospital number", null],
  ["Limb (operated)", "limb operated", null],
])("%s says %s and unit %s", (header, words, unit) => {
  expect(headerParts(header)).toEqual({ words, unit });
});

test.each([
  ["GAIN_MM", "gainMm", "mm"],
  ["gainMm", "gainMm", null],
  ["Amount lengthened (cm)", "gainMm", "cm"],
  ["Consolidation (months)", "consolidationDay", "months"],
  ["Time to union (months)", "consolidationDay", "months"],
  ["Date consolidated", "consolidationDay", null],
  ["Latency (days)", "distractionStartDay", "days"],
  ["Follow-up (months)", "lastFollowUpDay", "months"],
  ["Dïstraction  START", "distractionStartDay", null],
  ["Height pre-op (cm)", "statureMm.before", "cm"],
  ["Final height (cm)", "statureMm.final", "cm"],
  ["Post-op height (cm)", "statureMm.final", "cm"],
  ["Sitting height", "sittingHeightMm.before", null],
  ["Sitting height final (cm)", "sittingHeightMm.final", "cm"],
  ["Final left femur length", "femurLeftMm.final", null],
  ["Femur length (mm)", "femurOfSideMm.before", "mm"],
  ["Date of final height", "bodyDay.final", null],
  ["Complication 1", "eventType.1", null],
  ["Complication 2 date", "onsetDay.2", null],
  ["Complication 2 treatment", "handling.2", null],
  ["2nd complication", "eventType.2", null],
  ["complication_3_date", "onsetDay.3", null],
  ["Visit 4 date", "visitDay.4", null],
  ["Visit 4 cortices", "cortices.4", null],
  ["Score 1 value", "scoreValue.1", null],
  ["DOB", "dateOfBirth", null],
  ["Consultant", "surgeonName", null],
  ["Releases", "releases", null],
  ["Age (months)", "ageAtSurgeryYears", "months"],
])("the header %s is %s", (header, field, unit) => {
  expect(matched(header)).toMatchObject({ field, unit, dropped: null });
});

test.each([
  ["Follow-up", "a time unit is needed"],
  ["Latency", "a time unit is needed"],
  ["Complication", "a number is needed in a sheet of segments"],
  ["Cortices", "a number is needed in a sheet of segments"],
  ["Gained weight", "a part of a header matches nothing"],
  ["Total gain of both legs", "a part of a header matches nothing"],
  ["Bone age", "a part of a header matches nothing"],
  ["Surgery on other side", "a part of a header matches nothing"],
  ["Weight (mm)", "the unit is another kind's"],
  ["Smoking (years)", "the unit is another kind's"],
  ["Age 2", "a number belongs to visits, events and scores"],
])("the header %s matches nothing: %s", (header) => {
  expect(matched(header, `${named};Device`)).toMatchObject({ kind: "one-sheet", field: null, dropped: "matches-nothing" });
});

test.each([
  ["Surname", "direct-identifier"],
  ["Patient Name", "direct-identifier"],
  ["Post code", "direct-identifier"],
  ["Serial No", "direct-identifier"],
  ["NHS No", "national-number"],
  ["Comments", "comments"],
  ["Notes 2", "comments"],
  ["HI", "typed-index"],
  ["Healing index (days/cm)", "typed-index"],
])("the header %s is dropped: %s", (header, dropped) => {
  expect(matched(header)).toMatchObject({ field: null, dropped });
  expect(matched(header, named, { columns: { [header]: "device" } })).toMatchObject({ field: null, dropped });
});

test("a national number is the local number by the person's word only", () => {
  expect(matched("NHS No", "Bone;Side;Date of surgery", { columns: { "NHS No": "localId" } })).toMatchObject({ field: "localId" });
  expect(matched("NHS No", "Bone;Side;Date of surgery")).toMatchObject({ field: null });
});

test("an exact hospital number wins over a study number; two hospital numbers are asked about", () => {
  const of = (header: string) =>
    matchSheet(sheetOf(`${header};Bone;Side\n1;2;3;4`)).columns.map(
      ({ target, dropped, sharedWith }) => target?.field ?? `${dropped}${sharedWith.length}`,
    );
  expect(of("Study ID;MRN").slice(0, 2)).toEqual(["another-local-number0", "localId"]);
  const two = matchSheet(sheetOf("MRN;Hospital No;Bone\n1;2;3")).columns;
  expect(two[0]?.sharedWith).toEqual(["Hospital No"]);
});

test("the mapping's word comes before the header's own, for a field, a unit and a drop", () => {
  expect(matched("Knochengewinn", named, { columns: { Knochengewinn: "gainMm" }, units: { Knochengewinn: "cm" } })).toMatchObject({
    field: "gainMm",
    unit: "cm",
  });
  expect(matched("Gain (mm)", named, { columns: { "Gain (mm)": null } })).toMatchObject({ field: null, dropped: "by-your-word" });
  expect(matched("Komplikation", named, { columns: { Komplikation: "eventType.1" } })).toMatchObject({ field: "eventType.1" });
});

test.each([
  ["local_id;unit;sex;indication;smoking", "persons"],
  ["local_id;body_day;occasion;stature_mm;sitting_height_mm", "body-measures"],
  ["local_id;bone;side;surgery_day;gain_mm", "one-sheet"],
  ["local_id;bone;side;surgery_day;visit_day;distracted_mm;cortices", "visits"],
  ["local_id;bone;side;event_type;onset_day;handling", "events"],
  ["local_id;score_code;score_day;score_value", "scores"],
  ["MRN;Bone;Side;Clinic date;Cortices bridged;Weight bearing", "visits"],
  ["MRN;Segment;Side;Complication;Complication date;Treatment", "events"],
  ["MRN;Bone;Side;Op date;Gain (mm);Complication;Treatment", "one-sheet"],
  ["MRN;Bone;Side;Op date;Device;Complication 1;Complication 1 date", "one-sheet"],
])("a sheet with %s holds %s", (headers, kind) => {
  expect(matchSheet(sheetOf(`${headers}\n${"x;".repeat(headers.split(";").length - 1)}x`)).kind).toBe(kind);
});

test("no header belongs to two fields of one table", () => {
  for (const table of tableNames) {
    const owners = new Map<string, string>();
    for (const [id, field] of fieldsOf(table).filter(([, { madeByStrip }]) => !madeByStrip)) {
      for (const words of new Set([...wordsOf(id, field), ...(field.aliasesWithTimeUnit ?? []).map(fold)])) {
        expect(`${table}: ${words} is ${owners.get(words) ?? id}`).toBe(`${table}: ${words} is ${id}`);
        owners.set(words, id);
      }
    }
  }
});

test("no header belongs to two fields of persons and segments, which stand in one sheet", () => {
  const owners = new Map<string, string>();
  for (const [id, field] of [...fieldsOf("person"), ...fieldsOf("segment")].filter(([, { madeByStrip }]) => !madeByStrip)) {
    for (const words of new Set(wordsOf(id, field))) {
      expect(`${words} is ${owners.get(words) ?? id}`).toBe(`${words} is ${id}`);
      owners.set(words, id);
    }
  }
});

test("template header, id and label of every field that a file can hold are headers of it", () => {
  const { plain } = aliasIndex("one-sheet");
  for (const table of ["person", "segment"] as const) {
    for (const [id, field] of fieldsOf(table).filter(([, { madeByStrip }]) => !madeByStrip)) {
      for (const words of [snake(id), id, field.label]) expect(`${words} ${plain.get(fold(words))?.target.field}`).toBe(`${words} ${id}`);
    }
  }
});
