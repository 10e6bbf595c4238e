import { expect, test } from "vitest";
import { defaultLimits, type Finding, readSheet } from "@/lib/intake";
import { bytesOf, utf8, utf16 } from "./bytes";

const read = (bytes: Uint8Array | string, limits = defaultLimits) =>
  readSheet(typeof bytes === "string" ? utf8(bytes) : bytes, { file: "log.csv", limits });
const sheetOf = (bytes: Uint8Array | string) => {
  const { sheet, findings } = read(bytes);
  if (!sheet) throw new Error(`refused: ${findings.map(({ code }) => code).join(", ")}`);
  return sheet;
};
const codes = (findings: readonly Finding[]) => findings.map(({ code }) => code);
const refusal = (bytes: Uint8Array | string, limits = defaultLimits) => {
  const { sheet, findings } = read(bytes, limits);
  expect(sheet).toBeNull();
  return codes(findings);
};

test.each([
  ["UTF-8", utf8("Naïve;Größe\n1;2"), "utf-8"],
  ["UTF-8 with mark", utf8("\ufeffNaïve;Größe\n1;2"), "utf-8"],
  ["UTF-16 LE with mark", utf16("Naïve;Größe\n1;2", "le", true), "utf-16le"],
  ["UTF-16 BE with mark", utf16("Naïve;Größe\n1;2", "be", true), "utf-16be"],
  ["UTF-16 LE without", utf16("Naïve;Größe\n1;2", "le", false), "utf-16le"],
  ["UTF-16 BE without", utf16("Naïve;Größe\n1;2", "be", false), "utf-16be"],
  ["Windows-1252", Uint8Array.from("Na\u00efve;Gr\u00f6\u00dfe\n1;2", (unit) => unit.charCodeAt(0)), "windows-1252"],
])("headers of a file in %s", (_, bytes, encoding) => {
  const sheet = sheetOf(bytes);
  expect(sheet.headers).toEqual(["Naïve", "Größe"]);
  expect(sheet.encoding).toBe(encoding);
});

// WHATWG Encoding Standard, index windows-1252: 0x80 U+20AC, 0x92 U+2019, 0x96 U+2013, 0x9F U+0178
test("bytes 80 92 96 9F of Windows-1252 are euro sign, apostrophe, dash and Y with diaeresis", () => {
  const row = [0x41, 0x3b, 0x42, 0x0a, 0x80, 0x92, 0x3b, 0x96, 0x9f];
  expect(sheetOf(bytesOf(...row)).rows).toEqual([["€’", "–Ÿ"]]);
});

test("an encoding without a mark is said to be guessed", () => {
  expect(codes(read(bytesOf(0x41, 0x3b, 0x42, 0x0a, 0xe9, 0x3b, 0x31)).findings)).toEqual(["encoding-guessed"]);
  expect(codes(read("a;b\n1;2").findings)).toEqual([]);
});

test.each([
  ["commas", "id,gain\nA1,4.5\nA2,5", ","],
  ["semicolons with decimal commas", "id;gain;hi\n1;4,5;35,2", ";"],
  ["tabs", "id\tgain\nA1\t4,5", "\t"],
  ["semicolons under headers with commas", "Bone, side;Gain, cm;Age, years\nfemur, L;4,5;12", ";"],
  ["commas with a quoted semicolon", 'id,note\n1,"a;b;c;d"\n2,"e;f"', ","],
])("delimiter of %s", (_, text, delimiter) => {
  expect(sheetOf(text).delimiter).toBe(delimiter);
});

test("a first line `sep=;` names the delimiter and is no header", () => {
  const sheet = sheetOf("sep=;\na;b\n1;2");
  expect(sheet.headers).toEqual(["a", "b"]);
  expect(sheet.rowNumbers).toEqual([3]);
});

// RFC 4180, section 2, rules 5-7
test("quoted cells keep delimiters, doubled quotes and line ends", () => {
  const sheet = sheetOf('x,y,z\r\na,"b ""q"" c","d\r\ne"\r\nf,g,h\r\n');
  expect(sheet.rows).toEqual([
    ["a", 'b "q" c', "d\r\ne"],
    ["f", "g", "h"],
  ]);
  expect(sheet.rowNumbers).toEqual([2, 4]);
});

test("headers in quotes with commas stay whole", () => {
  expect(sheetOf('"Bar, Baz","Spam, Baz"\n1,2').headers).toEqual(["Bar, Baz", "Spam, Baz"]);
});

test("CRLF and LF in one file end rows alike; old Macs' CR too", () => {
  expect(sheetOf("a,b\r\n1,2\n3,4\r\n").rows).toEqual([
    ["1", "2"],
    ["3", "4"],
  ]);
  expect(sheetOf("a,b\r1,2\r3,4").rows.length).toBe(2);
});

test("blank rows are passed over and the file's own line numbers stay", () => {
  expect(sheetOf("a,b\n\n1,2\n,\n3,4\n\n").rowNumbers).toEqual([3, 5]);
});

test("a quotation mark without its partner refuses the file and names the line", () => {
  const { sheet, findings } = read('id,note\n1,"abc\n2,def\n3,ghi');
  expect(sheet).toBeNull();
  expect(findings.map(({ code, row }) => [code, row])).toEqual([["unclosed-quote", 2]]);
});

test("rows with more or fewer cells are set aside, the others stand", () => {
  const { sheet, findings } = read("a,b\n1,2,3\n4\n5,6\n7,8,,");
  expect(findings.map(({ code, row }) => [code, row])).toEqual([
    ["ragged-row", 2],
    ["ragged-row", 3],
  ]);
  expect(sheet?.rows).toEqual([
    ["5", "6"],
    ["7", "8"],
  ]);
});

test("repeated and blank headers each get a name of their own", () => {
  const { sheet, findings } = read("id,side,side,\n1,L,R,x");
  expect(sheet?.headers).toEqual(["id", "side", "side #2", "column 4"]);
  expect(codes(findings)).toEqual(["blank-header"]);
});

test('numbers that a file keeps from being changed by `="…"` are the numbers', () => {
  expect(sheetOf('MRN;Side\n="00123";L\n"=""00124""";R').rows).toEqual([
    ["00123", "L"],
    ["00124", "R"],
  ]);
});

test("headers named like parts of every object are headers", () => {
  const sheet = sheetOf("__proto__,constructor,toString\n1,2,3");
  expect(sheet.headers).toEqual(["__proto__", "constructor", "toString"]);
  expect(sheet.rows).toEqual([["1", "2", "3"]]);
});

test("title rows above the headers are passed over and said", () => {
  const { sheet, findings } = read("Lengthening log 2024;;;\n;;;\nHosp No;Segment;Side;Date of op\nA1;Femur;L;01/02/2024");
  expect(sheet?.headers).toEqual(["Hosp No", "Segment", "Side", "Date of op"]);
  expect(findings.map(({ code, row }) => [code, row])).toEqual([["title-row-skipped", 1]]);
  expect(sheet?.rowNumbers).toEqual([4]);
});

test("a table of headers nobody knows still has them in its first row", () => {
  expect(sheetOf("Kennung;Knochen;Seite\nA1;Femur;L").headers).toEqual(["Kennung", "Knochen", "Seite"]);
});

test.each([
  ["0 bytes", new Uint8Array(), ["empty-file"]],
  ["blanks only", utf8(" \r\n\t\r\n"), ["empty-file"]],
  ["a PDF by another name", utf8("%PDF-1.7\nid,side\n"), ["not-a-table"]],
  ["a workbook", bytesOf(0x50, 0x4b, 0x03, 0x04, 0x14), ["not-a-table"]],
  ["an older workbook", bytesOf(0xd0, 0xcf, 0x11, 0xe0, 0xa1), ["not-a-table"]],
  ["NUL bytes", utf8("a,b\n1,\u00002"), ["not-a-table"]],
  ["a page of markup", utf8("<!DOCTYPE html><html></html>"), ["not-a-table"]],
  ["bytes unlike their mark", bytesOf(0xef, 0xbb, 0xbf, 0x61, 0xff, 0xff), ["unreadable-encoding"]],
  ["a header only", utf8("id,side,bone\n"), ["header-only"]],
  ["rows without headers", utf8("1,2,3\n4,5,6"), ["no-header"]],
])("%s: refused whole", (_, bytes, expected) => {
  expect(refusal(bytes)).toEqual(expected);
});

test("301 columns, one row too many, 64 MB and a byte, a cell of 10 MB: each refused by its name", () => {
  expect(refusal(`${Array.from({ length: 301 }, (_, i) => `h${i}`).join(",")}\n${"1,".repeat(300)}1`)).toEqual(["too-many-columns"]);
  expect(refusal("a,b\n1,2\n3,4\n5,6", { ...defaultLimits, rows: 2 })).toEqual(["too-many-rows"]);
  expect(refusal(new Uint8Array(defaultLimits.bytes + 1).fill(0x61))).toEqual(["too-large"]);
  expect(refusal(`a,b\n1,${"x".repeat(10_000_000)}\n`)).toEqual(["cell-too-long"]);
  expect(refusal(`a,b\n1,"${"x\n".repeat(5_000_000)}`)).toEqual(["unclosed-quote"]);
});

test("300 columns and a cell of 10 000 characters are still read", () => {
  expect(sheetOf(`${Array.from({ length: 300 }, (_, i) => `h${i}`).join(",")}\n${"x,".repeat(299)}x`).headers.length).toBe(300);
  expect(sheetOf(`a,b\n1,${"x".repeat(10_000)}`).rows.length).toBe(1);
});
