import { zipSync } from "fflate";
import readWithAnother from "read-excel-file/node";
import { describe, expect, test } from "vitest";
import writeWithAnother from "write-excel-file/node";
import { readFile, readSheet, type Sheet } from "@/lib/intake";
import { isDateFormat } from "@/lib/intake/read/workbook/date-format";
import { columnOf } from "@/lib/intake/read/workbook/sheet-rows";
import { bytesOf } from "../demo-data/read";
import { load } from "./load";

const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

type Parts = {
  readonly sheets: Readonly<Record<string, string>>;
  readonly strings?: string;
  readonly styles?: string;
  readonly book?: string;
  readonly hidden?: readonly string[];
};

/** A packed workbook of parts written by hand. */
function packed({ sheets, strings = "", styles = "", book = "", hidden = [] }: Parts): Uint8Array {
  const names = Object.keys(sheets);
  const encode = (text: string) => new TextEncoder().encode(text);
  const relation = (id: string, type: string, target: string) => `<Relationship Id="${id}" Type="${office}/${type}" Target="${target}"/>`;
  const listed = names.map(
    (name, i) => `<sheet name="${name}" sheetId="${i + 1}" ${hidden.includes(name) ? 'state="hidden" ' : ""}r:id="s${i}"/>`,
  );
  return zipSync({
    "_rels/.rels": encode(`<Relationships>${relation("a", "officeDocument", "/xl/workbook.xml")}</Relationships>`),
    "xl/workbook.xml": encode(`<workbook xmlns="${main}" xmlns:r="${office}">${book}<sheets>${listed.join("")}</sheets></workbook>`),
    "xl/_rels/workbook.xml.rels": encode(
      `<Relationships>${names.map((_, i) => relation(`s${i}`, "worksheet", `worksheets/sheet${i}.xml`)).join("")}${relation("st", "sharedStrings", "sharedStrings.xml")}${relation("sy", "styles", "styles.xml")}</Relationships>`,
    ),
    "xl/sharedStrings.xml": encode(`<sst xmlns="${main}">${strings}</sst>`),
    "xl/styles.xml": encode(`<styleSheet xmlns="${main}">${styles}</styleSheet>`),
    ...Object.fromEntries(
      names.map((name, i) => [`xl/worksheets/sheet${i}.xml`, encode(`<worksheet xmlns="${main}">${sheets[name]}</worksheet>`)]),
    ),
  });
}

const inline = (cell: string, text: string) => `<c r="${cell}" t="inlineStr"><is><t>${text}</t></is></c>`;
const heads = `<row r="1">${inline("A1", "Hospital No")}${inline("B1", "Bone")}${inline("C1", "Side")}${inline("D1", "Op date")}${inline("E1", "Gain (mm)")}</row>`;
const onlySheet = async (parts: Parts): Promise<Sheet> => {
  const { sheets, findings } = await readFile(packed(parts), { file: "log.xlsx" });
  const [sheet] = sheets;
  if (!sheet) throw new Error(`onlySheet requires a workbook with a table, received one refused for ${findings.map(({ code }) => code)}`);
  return sheet;
};

describe("a workbook read here and by another reader", () => {
  test.each(["raw-workbook.xlsx", "raw-workbook.clean.xlsx"])("%s: the same cells", async (file) => {
    const bytes = new Uint8Array(bytesOf(file));
    const { sheets, skipped, findings } = await readFile(bytes, { file });
    expect(sheets.map((sheet) => sheet.file)).toEqual([`${file} · Log 2022`]);
    expect(skipped).toEqual([{ sheet: "Read me", why: "no-table" }]);
    expect(findings.map(({ code, row }) => [code, row])).toEqual([["title-row-skipped", 1]]);
    const [theirs] = await readWithAnother(Buffer.from(bytes));
    const said = (theirs?.data ?? []).map((row) =>
      row.map((cell) => (cell instanceof Date ? cell.toISOString().slice(0, 10) : cell === null ? "" : String(cell))),
    );
    expect(sheets[0]?.headerCells).toEqual(said[1]);
    expect(sheets[0]?.rows).toEqual(said.slice(2));
    expect(sheets[0]?.rowNumbers).toEqual(said.slice(2).map((_, i) => i + 3));
  });

  test("one that another program wrote", async () => {
    const day = new Date(Date.UTC(2024, 1, 29));
    const rows = [
      ["Hospital No", "Bone", "Side", "Op date", "Gain (mm)", "Vented"].map((value) => ({ value })),
      [
        { value: "007" },
        { value: "Femur & more <L>" },
        { value: "L" },
        { value: day, format: "d mmm yyyy" },
        { value: 45.25, type: Number },
        { value: true, type: Boolean },
      ],
    ];
    const buffer = await writeWithAnother(rows as never).toBuffer();
    const { sheets } = await readFile(new Uint8Array(buffer), { file: "x.xlsx" });
    expect(sheets[0]?.rows).toEqual([["007", "Femur & more <L>", "L", "2024-02-29", "45.25", "true"]]);
  });
});

describe("cells", () => {
  test("types of cells (ISO/IEC 29500-1, 18.18.11): errors keep their sign, runs are joined, readings left out", async () => {
    const { rows } = await onlySheet({
      strings: '<si><r><t>Fem</t></r><r><rPr><b/></rPr><t>ur</t></r><rPh sb="0" eb="1"><t>x</t></rPh></si><si><t>a_x000D_b</t></si>',
      sheets: {
        a: `<sheetData>${heads}<row r="3"><c r="A3" t="str"><f>A1</f><v>A&amp;1</v></c><c r="B3" t="s"><v>0</v></c><c r="C3" t="b"><v>1</v></c><c r="E3" t="e"><v>#REF!</v></c></row><row r="4"><c r="A4"><v>9434765870</v></c><c r="B4" t="s"><v>1</v></c><c r="D4" t="d"><v>2023-02-14T00:00:00Z</v></c><c r="E4"><v>5.8999999999999995</v></c></row></sheetData>`,
      },
    });
    expect(rows).toEqual([
      ["A&1", "Femur", "true", "", "#REF!"],
      ["9434765870", "a\rb", "", "2023-02-14", "5.9"],
    ]);
  });

  test("cells and rows without an address stand one after another", async () => {
    const bare = '<c t="inlineStr"><is><t>x</t></is></c>';
    const { rows, rowNumbers } = await onlySheet({
      sheets: { a: `<sheetData>${heads}<row>${bare}${bare}</row><row r="9">${bare}</row></sheetData>` },
    });
    expect(rows.map((row) => row.join("|"))).toEqual(["x|x|||", "x||||"]);
    expect(rowNumbers).toEqual([2, 9]);
  });

  test("merged cells hold the first one's value, whatever is left in the others", async () => {
    const left = `<sheetData>${heads}<row r="2">${inline("A2", "A1")}${inline("B2", "Femur")}</row><row r="3">${inline("A3", "old")}${inline("B3", "Tibia")}</row></sheetData><mergeCells count="1"><mergeCell ref="A2:A3"/></mergeCells>`;
    const { rows } = await onlySheet({ sheets: { a: left } });
    expect(rows.map(([id, bone]) => [id, bone])).toEqual([
      ["A1", "Femur"],
      ["", "Tibia"],
    ]);
  });

  test("prefixes of namespaces don't matter", async () => {
    const prefixed = `<x:sheetData xmlns:x="${main}">${heads.replace(/<(\/?)(row|c|is|t)(?=[\s>])/g, "<$1x:$2")}<x:row r="2"><x:c r="A2"><x:v>7</x:v></x:c></x:row></x:sheetData>`;
    expect((await onlySheet({ sheets: { a: prefixed } })).rows).toEqual([["7", "", "", "", ""]]);
  });

  test("a point before three digits is never a mark of thousands", async () => {
    const parts = {
      sheets: {
        a: `<sheetData>${heads}<row r="2">${inline("A2", "A1")}${inline("B2", "Femur")}${inline("C2", "L")}${inline("D2", "14/02/2023")}<c r="E2"><v>45.125</v></c></row></sheetData>`,
      },
    };
    const { rows } = await load([], { sheets: [await onlySheet(parts)], mapping: { decimal: "," } });
    expect(rows.segment[0]?.gainMm).toBe(45.125);
  });
});

describe("days", () => {
  // 1 January 2000 is 36526 in the 1900 system and 35064, 1462 days fewer, in that of 1904 (ISO/IEC 29500-1, 18.17.4.1)
  const day = (serial: number, book: string, styles: string, style = 1) =>
    onlySheet({
      book,
      styles,
      sheets: { a: `<sheetData>${heads}<row r="2">${inline("A2", "A1")}<c r="D2" s="${style}"><v>${serial}</v></c></row></sheetData>` },
    });
  const formats = (id: number, own = "") =>
    `${own}<cellStyleXfs><xf numFmtId="14"/></cellStyleXfs><cellXfs><xf numFmtId="0"/><xf numFmtId="${id}"/></cellXfs>`;
  test.each([
    [36_526, "", formats(14), "2000-01-01"],
    [36_526.75, "<workbookPr/>", formats(22), "2000-01-01"],
    [35_064, '<workbookPr date1904="1"/>', formats(14), "2000-01-01"],
    [35_064, '<workbookPr date1904="true"/>', formats(14), "2000-01-01"],
    [36_526, "", formats(0), "36526"],
    [36_526, "", formats(164, '<numFmts><numFmt numFmtId="164" formatCode="[$-809]dd mmmm yyyy;@"/></numFmts>'), "2000-01-01"],
    [36_526, "", formats(164, '<numFmts><numFmt numFmtId="164" formatCode="0.0&quot; days&quot;"/></numFmts>'), "36526"],
    [0.5, "", formats(20), "0.5"],
  ])("%d %s %#", async (serial, book, styles, text) => {
    expect((await day(serial, book, styles)).rows[0]?.[3]).toBe(text);
  });

  test.each([
    ["dd/mm/yyyy", true],
    ["d mmm yy", true],
    ["yyyy\\-mm\\-dd", true],
    ["[$-F800]dddd, mmmm dd, yyyy", true],
    ["mmm", true],
    ['"Day "d', true],
    ["General", false],
    ["0.00", false],
    ["#,##0", false],
    ["[h]:mm:ss", false],
    ["mm:ss.0", false],
    ["h:mm AM/PM", false],
    ['0" mm/day"', false],
    ["0.0\\d", false],
    ["@", false],
  ])("the format %s shows a day: %s", (format, expected) => expect(isDateFormat(format)).toBe(expected));

  test.each([
    ["A1", 0],
    ["Z9", 25],
    ["AA1", 26],
    ["AMJ2", 1023],
  ])("column of %s", (reference, column) => expect(columnOf(reference)).toBe(column));
});

describe("sheets", () => {
  const data = (rows: string) => `<sheetData>${rows}</sheetData>`;
  const one = `<row r="2">${inline("A2", "A1")}</row>`;
  test("each table becomes a sheet; hidden, blank and wordy ones are listed as passed over", async () => {
    const words = data(
      `<row r="1">${inline("A1", "Read")}${inline("B1", "me")}</row><row r="2">${inline("A2", "x")}${inline("B2", "y")}</row>`,
    );
    const bytes = packed({
      sheets: { "2023": data(heads + one), "2024": data(heads + one), old: data(heads + one), notes: words, blank: data("") },
      hidden: ["old"],
    });
    const { sheets, skipped, findings } = await readFile(bytes, { file: "log.xlsx" });
    expect(sheets.map(({ file }) => file)).toEqual(["log.xlsx · 2023", "log.xlsx · 2024"]);
    expect(skipped).toEqual([
      { sheet: "old", why: "hidden" },
      { sheet: "blank", why: "blank" },
      { sheet: "notes", why: "no-table" },
    ]);
    expect(findings).toEqual([]);
  });

  test("where no header is known, every sheet with headers is brought, to be mapped", async () => {
    const odd = data(
      `<row r="1">${inline("A1", "Alpha")}${inline("B1", "Beta")}</row><row r="2">${inline("A2", "x")}${inline("B2", "y")}</row>`,
    );
    expect((await readFile(packed({ sheets: { a: odd, b: odd } }), { file: "log.xlsx" })).sheets).toHaveLength(2);
  });

  test("markup is cut in pieces wherever it falls", async () => {
    const rows = Array.from(
      { length: 30_000 },
      (_, i) => `<row r="${i + 2}">${inline(`A${i + 2}`, `é${i}`)}<c r="E${i + 2}"><v>${i}</v></c></row>`,
    );
    const sheet = await onlySheet({ sheets: { a: data(heads + rows.join("")) } });
    expect(sheet.rows).toHaveLength(30_000);
    expect(sheet.rows.every(([id, , , , gain], i) => id === `é${i}` && gain === String(i))).toBe(true);
  });

  test("told to stop, it stops", async () => {
    const stop = new AbortController();
    const reading = readFile(packed({ sheets: { a: data(heads + one) } }), { file: "x.xlsx", signal: stop.signal });
    stop.abort(new Error("told to stop"));
    await expect(reading).rejects.toThrow("told to stop");
  });
});

describe("refused whole, with the reason", () => {
  const codeOf = async (bytes: Uint8Array, limits?: Parameters<typeof readFile>[1]["limits"]) => {
    const { sheets, findings } = await readFile(bytes, { file: "x.xlsx", ...(limits ? { limits } : {}) });
    expect(sheets).toEqual([]);
    return findings.map(({ code }) => code);
  };
  const workbook = packed({ sheets: { a: `<sheetData>${heads}<row r="2">${inline("A2", "A1")}</row></sheetData>` } });
  const limits = { bytes: 1_000_000, rows: 100, columns: 300, cellCharacters: 100 };

  test.each<readonly [string, Uint8Array, string]>([
    ["cut off", workbook.slice(0, workbook.length / 2), "not-a-table"],
    ["another packed file", zipSync({ "a.xml": new Uint8Array(3) }), "not-a-table"],
    ["broken markup", packed({ sheets: { a: '<sheetData><row r="1"><c></row></sheetData>' } }), "not-a-table"],
    ["blank", packed({ sheets: { a: "<sheetData/>" } }), "empty-file"],
    ["headers only", packed({ sheets: { a: `<sheetData>${heads}</sheetData>` } }), "header-only"],
  ])("%s", async (_, bytes, code) => expect(await codeOf(bytes)).toEqual([code]));

  test("limits of a workbook are those of a file", async () => {
    expect(await codeOf(workbook, { ...limits, bytes: 10 })).toEqual(["too-large"]);
    expect(await codeOf(workbook, { ...limits, columns: 4 })).toEqual(["too-many-columns"]);
    expect(await codeOf(workbook, { ...limits, cellCharacters: 5 })).toEqual(["cell-too-long"]);
    expect(await codeOf(workbook, { ...limits, rows: 0 })).toEqual(["too-many-rows"]);
  });

  test("what would swell to more than 512 MB is not unpacked", async () => {
    const claimed = workbook.slice();
    const view = new DataView(claimed.buffer);
    // the directory's word on the size before packing (APPNOTE 4.4.9), 24 bytes into an entry
    for (let at = 0; at < claimed.length - 4; at++) if (view.getUint32(at, true) === 0x02014b50) view.setUint32(at + 24, 400_000_000, true);
    expect(await codeOf(claimed)).toEqual(["too-large"]);
  });

  test("a file of text named .xlsx is read as text, and readSheet names a workbook", async () => {
    const text = new TextEncoder().encode("MRN,Bone\nA1,Femur");
    expect((await readFile(text, { file: "x.xlsx" })).sheets[0]?.file).toBe("x.xlsx");
    expect(readSheet(workbook, { file: "x.csv" }).findings.map(({ code }) => code)).toEqual(["not-a-table"]);
  });
});
