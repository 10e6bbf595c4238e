import { describe, expect, test } from "vitest";
import { emptyMapping, type Mapping, mappingFor, mappingName, mappingToKeep, mergeMappings, parseMapping } from "@/lib/intake";
import { load, oneRow, sheetOf, table } from "./load";

const saying = (more: Partial<Mapping>): Mapping => ({ ...emptyMapping, ...more });
const saved = (name: string, columns: Mapping["columns"]) => ({ name, mapping: saying({ columns }) });

describe("the saved mapping that fits", () => {
  const { headers } = sheetOf("A,B,C,D,E\n1,2,3,4,5");
  test.each([
    ["all its columns stand in the sheet", [saved("x", { A: "localId", B: "bone" })], "x"],
    ["four of five do", [saved("x", { A: "localId", B: "bone", C: "side", D: "sex", Z: null })], "x"],
    ["three of five do", [saved("x", { A: "localId", B: "bone", C: "side", Y: "sex", Z: null })], null],
    ["one explains more", [saved("x", { A: "localId" }), saved("y", { A: "localId", B: "bone" })], "y"],
    [
      "of two that explain as much, the one that says least else",
      [saved("x", { A: "localId", B: "bone", C: "side", D: "sex", Z: null }), saved("y", { A: "localId", B: "bone", C: "side", D: "sex" })],
      "y",
    ],
    ["one that says nothing fits nothing", [saved("x", {})], null],
    ["none is kept", [], null],
  ] as const)("%s", (_, kept, name) => expect(mappingFor({ headers }, kept)?.name ?? null).toBe(name));
});

test("a mapping's name goes by its headers, in whatever order, and by nothing else", () => {
  const name = mappingName({ columns: { A: "bone", B: null } });
  expect(name).toMatch(/^[0-9a-f]{12}$/);
  expect(mappingName({ columns: { B: "side", A: null } })).toBe(name);
  expect(mappingName({ columns: { A: "bone" } })).not.toBe(name);
});

test("kept: headers, units, spellings, answers by kind; not what a detector doubts", () => {
  const mapping = saying({
    columns: { Gain: "gainMm", "Zed Example": "device", "Ward 943 476 5870": null },
    units: { Gain: "cm", "Zed Example": "mm" },
    dates: "dmy",
    values: { device: { "mag nail": "magnetic-nail", "Mr Zed's nail": "magnetic-nail" } },
    answers: { "near-duplicate": "new" },
  });
  expect(mappingToKeep(mapping)).toEqual({
    columns: { Gain: "gainMm" },
    units: { Gain: "cm" },
    dates: "dmy",
    decimal: null,
    values: { device: { "mag nail": "magnetic-nail" } },
    answers: { "near-duplicate": "new" },
  });
});

test("a spelling that holds a name which the file itself shows is not kept", async () => {
  const text = oneRow({ Surname: "Quillfern", Device: "quillfern rod" });
  const values = { device: { "quillfern rod": "magnetic-nail", rod: "magnetic-nail" } };
  const { mapping, rows } = await load(text, { mapping: { values } });
  expect(rows.segment[0]?.device).toBe("magnetic-nail");
  expect(mapping.values).toEqual({ device: { rod: "magnetic-nail" } });
});

test("each sheet has a mapping of its own, and is read by the one that is given for it", async () => {
  const first = oneRow({ When: "03/04/2023", Size: "5.1" });
  const second = table({ MRN: "A001", Bone: "Femur", Side: "L", When: "05/06/2023", Size: "2" });
  const mappings = {
    "log.csv": saying({ columns: { When: "lastFollowUpDay", Size: "gainMm" }, units: { Size: "cm" }, dates: "dmy" }),
    "log-2.csv": saying({ columns: { When: "visitDay", Size: "cortices" }, dates: "mdy" }),
  };
  const { rows, mappings: settled, mapping } = await load([first, second], { mappings });
  expect(rows.segment[0]?.gainMm).toBe(51);
  // 14 February to 3 April: 28 − 14 + 31 + 3; to 6 May, month first: 28 − 14 + 31 + 30 + 6
  expect((rows.segment[0]?.lastFollowUpDay ?? 0) - (rows.segment[0]?.surgeryDay ?? 0)).toBe(48);
  expect((rows.visit[0]?.visitDay ?? 0) - (rows.segment[0]?.surgeryDay ?? 0)).toBe(81);
  expect(settled["log.csv"]?.columns).toMatchObject({ When: "lastFollowUpDay", "Hospital No": "localId" });
  expect(settled["log-2.csv"]).toMatchObject({ columns: { When: "visitDay", MRN: "localId" }, dates: "mdy" });
  expect(parseMapping(JSON.parse(JSON.stringify(settled["log-2.csv"])))).toEqual(settled["log-2.csv"]);
  expect(mapping.columns).toMatchObject({ When: "lastFollowUpDay", MRN: "localId" });
});

test("of several mappings the first word stands", () => {
  const a = saying({ columns: { A: "bone" }, dates: "dmy", values: { sex: { x: "male" } } });
  const b = saying({ columns: { A: "side", B: null }, dates: "mdy", decimal: ",", values: { sex: { x: "female", y: "male" } } });
  expect(mergeMappings([a, b])).toEqual(
    saying({ columns: { A: "bone", B: null }, dates: "dmy", decimal: ",", values: { sex: { x: "male", y: "male" } } }),
  );
});
