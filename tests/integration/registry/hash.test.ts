import { createHash } from "node:crypto";
import Database from "better-sqlite3";
import fc from "fast-check";
import { expect, test } from "vitest";
import { lineOf, numberText } from "@/lib/registry/read/line-sql";
import { at, fresh, freshWithLists } from "./folder";
import { anEvent, aPerson, aSegment, aVisit, personKey, row, rowsOf } from "./rows";

const sha256 = (lines: readonly string[]) =>
  createHash("sha256")
    .update(lines.map((line) => `${line}\n`).join(""))
    .digest("hex");

test("the hash of nothing is SHA-256 of nothing", async () => {
  const registry = await fresh();
  expect(await registry.contentHash()).toBe("e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
});

test("the hash is SHA-256 of these lines, written by hand from its definition", async () => {
  const registry = await freshWithLists();
  const [p1, p2] = [personKey(1), personKey(2)];
  // brought in an order that is not that of the keys
  await registry.commit(
    rowsOf({
      person: [aPerson(2, { diabetes: false }), aPerson(1, { sex: "female", smoking: "never" })],
      bodyMeasure: [row("bodyMeasure", { person: p1, bodyDay: 990, statureMm: 1601.5, occasion: "before" })],
      segment: [
        aSegment(2, { bone: "tibia", surgeryDay: -5 }),
        aSegment(1, { surgeryDay: 1000, gainMm: 50 }),
        aSegment(1, { surgeryDay: 200 }),
      ],
      visit: [aVisit(1, 1100, { cortices: 3 }), aVisit(1, 1030)],
      event: [
        anEvent(1, { onsetDay: 3 }),
        anEvent(1, { bone: "femur", side: "left", surgeryDay: 1000, planned: true }),
        anEvent(1, { eventNumber: 2 }),
        anEvent(1),
      ],
      score: [row("score", { person: p2, scoreCode: "a-score", scoreDay: 4, scoreValue: 0 })],
    }),
    { at },
  );
  const lines = [
    `{"table":"person","row":{"person":"${p1}","unit":"unit-1","sex":"female","smoking":"never","line":"dated"}}`,
    `{"table":"person","row":{"person":"${p2}","unit":"unit-1","diabetes":false,"line":"dated"}}`,
    `{"table":"bodyMeasure","row":{"person":"${p1}","bodyDay":990,"occasion":"before","statureMm":1601.5}}`,
    `{"table":"segment","row":{"person":"${p1}","bone":"femur","side":"left","surgeryDay":200,"surgeryYear":2020}}`,
    `{"table":"segment","row":{"person":"${p1}","bone":"femur","side":"left","surgeryDay":1000,"surgeryYear":2020,"gainMm":50}}`,
    `{"table":"segment","row":{"person":"${p2}","bone":"tibia","side":"left","surgeryDay":-5,"surgeryYear":2020}}`,
    `{"table":"visit","row":{"person":"${p1}","bone":"femur","side":"left","surgeryDay":1000,"visitDay":1030}}`,
    `{"table":"visit","row":{"person":"${p1}","bone":"femur","side":"left","surgeryDay":1000,"visitDay":1100,"cortices":3}}`,
    `{"table":"event","row":{"person":"${p1}","eventType":"stiffness","eventNumber":1}}`,
    `{"table":"event","row":{"person":"${p1}","eventType":"stiffness","eventNumber":2}}`,
    `{"table":"event","row":{"person":"${p1}","eventType":"stiffness","eventNumber":1,"onsetDay":3}}`,
    `{"table":"event","row":{"person":"${p1}","bone":"femur","side":"left","surgeryDay":1000,"eventType":"stiffness","eventNumber":1,"planned":true}}`,
    `{"table":"score","row":{"person":"${p2}","scoreCode":"a-score","scoreDay":4,"scoreValue":0}}`,
  ];
  expect(await registry.contentHash()).toBe(sha256(lines));
});

test("a number stands as JavaScript writes it, whatever its digits and size", async () => {
  const gains = [0, 50, 48.5, 0.1 + 0.2, 7.800000000000001, 25.4 * 1.7, 1e-4, 1.5e-7, 249.99999999999997, 5e-324, 1 / 3];
  const registry = await fresh();
  await registry.commit(rowsOf({ person: gains.map((_, i) => aPerson(i)), segment: gains.map((gainMm, i) => aSegment(i, { gainMm })) }), {
    at,
  });
  const people = gains.map((_, i) => `{"table":"person","row":{"person":"${personKey(i)}","unit":"unit-1","line":"dated"}}`);
  const segments = gains.map(
    (gainMm, i) =>
      `{"table":"segment","row":{"person":"${personKey(i)}","bone":"femur","side":"left","surgeryDay":1000,"surgeryYear":2020,"gainMm":${JSON.stringify(gainMm)}}}`,
  );
  expect(await registry.contentHash()).toBe(sha256([...people, ...segments]));
});

test("any number stands so", () => {
  const db = new Database(":memory:");
  db.exec("CREATE TABLE v (gain_mm REAL)");
  const text = db.prepare(`SELECT '' || ${numberText("v.gain_mm")} FROM (SELECT ? AS gain_mm) v`).pluck();
  const digits = fc.tuple(fc.integer({ min: -999_999_999, max: 999_999_999 }), fc.nat(9)).map(([n, point]) => n / 10 ** point);
  fc.assert(
    fc.property(fc.oneof(fc.double({ noNaN: true, noDefaultInfinity: true }), digits), (value) => {
      expect(lineOf(text.get(value) as string)).toBe(String(value));
    }),
    { numRuns: 5000 },
  );
  db.close();
});
