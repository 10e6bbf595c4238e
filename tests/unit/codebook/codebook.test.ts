import { describe, expect, expectTypeOf, test } from "vitest";
import {
  eventTypes,
  eventTypesByOrigin,
  type Field,
  fieldOf,
  fieldsOf,
  fileOnlyFields,
  findingSeverities,
  flagOf,
  fold,
  originOf,
  type SegmentRow,
  snake,
  tableNames,
  tables,
} from "@/lib/codebook";

const everyField = tableNames.flatMap((table) => fieldsOf(table).map(([id, field]) => ({ table, id, field })));

test("a field declared once keeps its type", () => {
  expectTypeOf<SegmentRow["bone"]>().toEqualTypeOf<"femur" | "tibia" | "humerus" | "forearm" | "foot-ray" | "hand-ray">();
  expectTypeOf<SegmentRow["gainMm"]>().toEqualTypeOf<number | null>();
  expectTypeOf<SegmentRow["canalVented"]>().toEqualTypeOf<boolean | null>();
  expectTypeOf<SegmentRow["surgeryDay"]>().toEqualTypeOf<number>();
});

test.each(tableNames)("the natural key of %s is declared among its fields", (table) => {
  expect(tables[table].key.filter((id) => !(id in tables[table].fields))).toEqual([]);
});

test("no alias belongs to two fields of one kind of sheet", () => {
  for (const table of tableNames) {
    const owners = new Map<string, string>();
    for (const [id, field] of fieldsOf(table)) {
      if (field.madeByStrip) continue;
      for (const alias of new Set(
        [snake(id).replaceAll("_", " "), field.label, ...(field.aliases ?? []), ...(field.aliasesWithTimeUnit ?? [])].map(fold),
      )) {
        expect(`${alias} → ${owners.get(alias) ?? id}`).toBe(`${alias} → ${id}`);
        owners.set(alias, id);
      }
    }
    for (const [id, field] of Object.entries(fileOnlyFields))
      for (const alias of field.aliases) expect(owners.get(fold(alias)) ?? id).toBe(id);
  }
});

test("spellings of values lead to codes that are declared, and are folded already", () => {
  for (const { id, field } of everyField) {
    if (field.kind !== "code") continue;
    for (const [spelling, code] of Object.entries(field.values ?? {})) {
      expect(field.codes, `${id}: ${spelling}`).toContain(code);
      expect(fold(spelling)).toBe(spelling);
    }
    for (const word of field.asks ?? []) expect(fold(word)).toBe(word);
  }
});

test("usual ranges lie within the hard ones", () => {
  for (const { id, field } of everyField) {
    if ((field.kind !== "number" && field.kind !== "count") || !field.hard || !field.usual) continue;
    expect(field.usual[0], id).toBeGreaterThanOrEqual(field.hard[0]);
    expect(field.usual[1], id).toBeLessThanOrEqual(field.hard[1]);
  }
});

test("no field could hold free text, a name or a date", () => {
  const kinds = new Set(everyField.map(({ field }) => field.kind));
  expect([...kinds].sort()).toEqual(["code", "count", "day", "flag", "keyed", "listed", "number"]);
  const listed = everyField.filter(({ field }) => field.kind === "listed");
  for (const { field } of listed) expect(new RegExp((field as Extract<Field, { kind: "listed" }>).pattern).test("John Smith")).toBe(false);
});

test("every event type has one origin", () => {
  expect(new Set(eventTypes).size).toBe(eventTypes.length);
  for (const [origin, types] of Object.entries(eventTypesByOrigin)) for (const type of types) expect(originOf(type)).toBe(origin);
});

test("findings are of four severities", () => {
  expect(new Set(Object.values(findingSeverities))).toEqual(new Set(["error", "ask", "warn", "note"]));
});

describe("names", () => {
  test.each([
    ["gainMm", "gain_mm"],
    ["readmittedWithin30Days", "readmitted_within30_days"],
    ["mldfaBeforeDeg", "mldfa_before_deg"],
  ])("%s is the column %s", (id, column) => expect(snake(id)).toBe(column));

  test.each([
    ["Côté", "cote"],
    ["  X-ray  (not united) ", "x ray not united"],
    ["+", "+"],
    ["3/4", "3 4"],
  ])("%j folds to %j", (text, folded) => expect(fold(text)).toBe(folded));

  test.each([
    ["yes", true],
    ["+", true],
    ["none", false],
    ["", null],
    ["not known", null],
    ["maybe", undefined],
  ])("the flag %j is %j", (text, flag) => expect(flagOf(text)).toBe(flag));

  test("a field that isn't there is an error that says so", () => {
    expect(() => fieldOf("segment", "shoeSize")).toThrow("fieldOf requires a field of segment, received shoeSize");
  });
});
