import { existsSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { aUnit, lengthbook } from "./run";

const header = "Hosp No;DOB;Bone;Side;Date of op;Gain (cm);Date consolidated;Surname";
const good = `${header}\nA1001;01.02.1990;Femur;L;05.03.2020;5,0;20.08.2020;Quirkle\nA1001;01.02.1990;Femur;R;05.03.2020;5,2;25.08.2020;Quirkle\n`;
const empty = { persons: 0, bodyMeasures: 0, segments: 0, visits: 0, events: 0, scores: 0 };

describe("a sheet with names in it", () => {
  const unit = aUnit();
  const sheet = unit.file("unit.csv", good);
  const bring = (...more: string[]) =>
    lengthbook(unit.data, "intake", sheet, "--dates", "dmy", "--passphrase-file", unit.secret, "--json", ...more);

  test("a check alone writes nothing", () => {
    const checked = bring("--check-only");
    expect(checked).toMatchObject({ code: 0, json: { batch: null, committed: empty, dropped: ["Surname"] } });
    expect(lengthbook(unit.data, "batches", "--json").json).toEqual([]);
  });

  test("goes in stripped, and the recovery code is told once, on stderr", () => {
    const brought = bring();
    expect(brought).toMatchObject({ code: 0, json: { batch: 1, committed: { persons: 1, segments: 2 }, refused: 0 } });
    expect(brought.err).toMatch(/recovery code/i);
    expect(`${brought.out}${brought.err}`).not.toMatch(/Quirkle|A1001/);
  });

  test("a file whose name names a person is told by its place", () => {
    const named = unit.file("femora of Mr Quirkle.csv", `${good}A1002;01.02.1990;Femur;both;05.03.2020;5,0;20.08.2020;Other\n`);
    const call = [
      "intake",
      named,
      "--dates",
      "dmy",
      "--passphrase-file",
      unit.secret,
      "--check-only",
      "--refused",
      unit.file("aside.csv", ""),
    ];
    const checked = lengthbook(unit.data, ...call, "--json");
    expect(checked.json).toMatchObject({ refused: 1, findings: expect.arrayContaining([expect.objectContaining({ file: "file 1" })]) });
    expect(checked.err).toContain("1 row set aside of file 1");
    const told = lengthbook(unit.data, ...call);
    expect(`${checked.out}${checked.err}${told.out}${told.err}`).not.toContain("Quirkle");
  });

  test("the same again is nothing new", () => {
    const again = bring();
    expect(again).toMatchObject({ code: 0, json: { batch: null, committed: empty, unchanged: { persons: 1, segments: 2 } } });
    expect(again.err).not.toMatch(/recovery code/i);
  });

  test("undo, and the undo of the undo gives the hash back", () => {
    const [first] = lengthbook(unit.data, "batches", "--json").json as { contentHash: string }[];
    expect(lengthbook(unit.data, "undo", "1", "--json")).toMatchObject({ code: 0, json: { batch: 2, undoes: 1 } });
    expect(lengthbook(unit.data, "undo", "2", "--json")).toMatchObject({ code: 0, json: { batch: 3, contentHash: first?.contentHash } });
  });

  test("a healing figure comes out, and its reference asks again", () => {
    const answer = lengthbook(unit.data, "measure", "surgery-to-consolidation", "--by", "side", "--json");
    // by hand: 168 days over 5.0 cm and 173 days over 5.2 cm
    expect(answer.json).toMatchObject({
      measure: "surgery-to-consolidation",
      unit: "days/cm",
      groups: [
        { key: { side: "left" }, patients: 1, segments: 1, healed: 1, mean: { estimate: 33.6 } },
        { key: { side: "right" }, healed: 1, mean: { estimate: 1730 / 52 } },
      ],
    });
    const { stamp } = answer.json as { stamp: string };
    expect(lengthbook(unit.data, "result", stamp, "--json").json).toMatchObject({ stamp, sameVersion: true, groups: [{}, {}] });
  });

  test("a wrong passphrase is told before any row is read", () => {
    const wrong = unit.file("wrong.txt", "another passphrase here\n");
    const refused = lengthbook(unit.data, "intake", sheet, "--dates", "dmy", "--passphrase-file", wrong, "--json");
    expect(refused.code).toBe(1);
    expect(refused.err).toMatch(/does not open/);
  });
});

describe("what can't go in is told, and nothing is written", () => {
  const unit = aUnit();
  const wide = Array.from({ length: 301 }, (_, i) => `c${i}`).join(",");
  test.each([
    { name: "nothing.csv", text: "", code: "empty-file" },
    { name: "report.csv", text: "%PDF-1.7\n%âãÏÓ\n1 0 obj\n", code: "not-a-table" },
    { name: "wide.csv", text: `${wide}\n${wide}\n`, code: "too-many-columns" },
    { name: "header.csv", text: `${header}\n`, code: "header-only" },
    {
      name: "long.csv",
      text: `${header}\nA1;01.02.1990;Femur;L;05.03.2020;5,0;20.08.2020;${"x".repeat(10 * 1024 * 1024)}\n`,
      code: "cell-too-long",
    },
    {
      name: "order.csv",
      text: `${header.replaceAll("Surname", "Sex")}\nA1;25.12.1990;Femur;L;25.03.2020;5,0;20.08.2020;m\n`,
      code: "date-order-unknown",
    },
  ])("$name: $code", ({ name, text, code }) => {
    const file = unit.file(name, text);
    const order = code === "date-order-unknown" ? "mdy" : "dmy";
    const refused = lengthbook(unit.data, "intake", file, "--dates", order, "--passphrase-file", unit.secret, "--json");
    expect(refused.code, refused.err).toBe(1);
    const answer = refused.json as { findings: { code: string }[]; asks: { code: string }[] };
    expect([...answer.findings, ...answer.asks].map((one) => one.code)).toContain(code);
    expect(lengthbook(unit.data, "batches", "--json").json).toEqual([]);
  });
});

describe("a wrong call", () => {
  const unit = aUnit();
  test.each([
    [["intake"], "at least one file"],
    [["intake", "nowhere.csv", "--passphrase-file", "x"], "can be read"],
    [["undo", "seven"], "number of one batch"],
    [["undo", "7"], "requires a batch"],
    [["measure", "speed"], "measure --list"],
    [["measure", "gain", "--by", "colour"], "--by requires fields"],
    [["measure", "gain", "--cohort", "{"], "JSON"],
    [["template", "cats"], "one of persons"],
    [["result", "abc"], "twelve characters"],
    [["nothing"], "COMMAND"],
  ])("%j exits 2 and says what is right", (args, message) => {
    const called = lengthbook(unit.data, ...args);
    expect(called.code).toBe(2);
    expect(called.err).toContain(message);
    expect(called.out).toBe("");
  });

  test("a reference that nobody asked is refused", () => {
    expect(lengthbook(unit.data, "result", "0123456789ab").code).toBe(1);
  });

  test("a template is CSV on stdout", () => {
    const { code, out } = lengthbook(unit.data, "template", "one-sheet");
    expect(code).toBe(0);
    expect(out.split(",").length).toBeGreaterThan(80);
    expect(existsSync("one-sheet.csv")).toBe(false);
  });
});

describe("a workbook, and a shape that was seen before", () => {
  const unit = aUnit();
  const ours = "Pat nr;Knochen;Seite;OP;Gewinn;Ward\nA2001;Femur;L;03/04/2020;5,1;7\nA2002;Femur;R;04/04/2020;5,2;8\n";
  const sheet = unit.file("ours.csv", ours);
  const mapping = unit.file(
    "ours.json",
    JSON.stringify({
      columns: { "Pat nr": "localId", Knochen: "bone", Seite: "side", OP: "surgeryDay", Gewinn: "gainMm", Ward: null },
      units: { Gewinn: "cm" },
      dates: "dmy",
    }),
  );
  const bring = (file: string, ...more: string[]) =>
    lengthbook(unit.data, "intake", file, "--passphrase-file", unit.secret, "--json", ...more);

  test("a mapping saved is taken for the next file of that shape, and said so", () => {
    expect(bring(sheet).code).toBe(1);
    const kept = unit.file("kept.json", "");
    const first = bring(sheet, "--mapping", mapping, "--save-mapping", kept);
    expect(first).toMatchObject({ code: 0, json: { batch: 1, committed: { segments: 2 } } });
    expect(JSON.parse(readFileSync(kept, "utf8"))).toMatchObject({
      columns: { OP: "surgeryDay", Ward: null },
      units: { Gewinn: "cm" },
      dates: "dmy",
    });
    const longer = unit.file("longer.csv", `${ours.replace("5,1", "5,3")}A2003;Tibia;R;05/04/2020;4,0;9\n`);
    const next = bring(longer);
    expect(next.err).toMatch(/saved mapping [0-9a-f]{12}\.json fits longer\.csv/);
    expect(next).toMatchObject({
      code: 0,
      json: {
        batch: 2,
        committed: { segments: 1 },
        changed: { segments: 1 },
        changes: [{ file: "longer.csv", row: 2, table: "segment", field: "gainMm", from: 51, to: 53, days: null }],
        absent: { segments: 0 },
      },
    });
  });

  test("rows set aside come back in a file of their own, and go in when mended", () => {
    const out = unit.file("aside.csv", "");
    const faulty = unit.file("faulty.csv", `${ours}A2004;Femur;beide;06/04/2020;4,4;1\n`.replace("beide", "both"));
    expect(bring(faulty, "--refused", out)).toMatchObject({ code: 0, json: { refused: 1 } });
    const mended = unit.file("mended.csv", readFileSync(out, "utf8").replace(";both;", ";L;"));
    expect(bring(mended)).toMatchObject({ code: 0, json: { committed: { persons: 1, segments: 1 }, refused: 0 } });
  });

  test("a workbook goes in, its other sheets are named as passed over", () => {
    const clean = lengthbook(unit.data, "intake", "demo-data/raw-workbook.clean.xlsx", "--passphrase-file", unit.secret, "--json");
    expect(clean).toMatchObject({ code: 0, json: { committed: { segments: 81, persons: 52 }, refused: 0 } });
    expect(clean.err).toContain("passed over: raw-workbook.clean.xlsx · Read me");
  });
});
