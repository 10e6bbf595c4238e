import { type Entry, zipOf } from "./zip";

/** A cell of a workbook: text, a number, or a day with the format in which a spreadsheet shows it. */
export type WorkbookCell =
  | { readonly text: string }
  | { readonly number: number }
  | { readonly day: number; readonly as: DayFormat }
  | null;
export type DayFormat = "dd/mm/yyyy" | "d mmm yy" | "yyyy-mm-dd";
export type WorkbookSheet = {
  readonly name: string;
  readonly rows: readonly (readonly WorkbookCell[])[];
  readonly merged?: readonly string[];
};

const formats: readonly DayFormat[] = ["dd/mm/yyyy", "d mmm yy", "yyyy-mm-dd"];
/** Days from the first day of each system of dates to 1 January 1970. */
const daysBefore1970 = { "1900": 25_569, "1904": 24_107 } as const;
export type DateSystem = keyof typeof daysBefore1970;

const head = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const packaged = "http://schemas.openxmlformats.org/package/2006";

/** A workbook (ISO/IEC 29500) with shared strings, dates as serial numbers with a custom format, and merged cells. The same sheets give the same bytes. */
export function workbookOf(sheets: readonly WorkbookSheet[], system: DateSystem): Uint8Array {
  const strings = new Map<string, number>();
  const written = sheets.map(
    (sheet, index): Entry => ({ name: `xl/worksheets/sheet${index + 1}.xml`, text: sheetXml(sheet, strings, system) }),
  );
  const names = sheets.map((_, index) => index + 1);
  return zipOf([
    { name: "[Content_Types].xml", text: contentTypes(names) },
    {
      name: "_rels/.rels",
      text: `${head}<Relationships xmlns="${packaged}/relationships"><Relationship Id="rId1" Type="${office}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    },
    { name: "xl/workbook.xml", text: workbookXml(sheets, system) },
    { name: "xl/_rels/workbook.xml.rels", text: relations(names) },
    { name: "xl/styles.xml", text: stylesXml },
    { name: "xl/sharedStrings.xml", text: stringsXml([...strings.keys()]) },
    ...written,
  ]);
}

function workbookXml(sheets: readonly WorkbookSheet[], system: DateSystem): string {
  const listed = sheets.map(({ name }, index) => `<sheet name="${escaped(name)}" sheetId="${index + 1}" r:id="rId${index + 1}"/>`).join("");
  const date1904 = system === "1904" ? '<workbookPr date1904="1"/>' : "<workbookPr/>";
  return `${head}<workbook xmlns="${main}" xmlns:r="${office}">${date1904}<sheets>${listed}</sheets></workbook>`;
}

function contentTypes(names: readonly number[]): string {
  const kind = "application/vnd.openxmlformats-officedocument.spreadsheetml";
  const part = (name: string, type: string) => `<Override PartName="${name}" ContentType="${kind}.${type}+xml"/>`;
  const parts = [part("/xl/workbook.xml", "sheet.main"), part("/xl/styles.xml", "styles"), part("/xl/sharedStrings.xml", "sharedStrings")];
  const sheets = names.map((number) => part(`/xl/worksheets/sheet${number}.xml`, "worksheet"));
  const defaults = `<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/>`;
  return `${head}<Types xmlns="${packaged}/content-types">${defaults}${[...parts, ...sheets].join("")}</Types>`;
}

function relations(names: readonly number[]): string {
  const relation = (id: number, type: string, target: string) =>
    `<Relationship Id="rId${id}" Type="${office}/${type}" Target="${target}"/>`;
  const sheets = names.map((number) => relation(number, "worksheet", `worksheets/sheet${number}.xml`));
  const others = [relation(names.length + 1, "styles", "styles.xml"), relation(names.length + 2, "sharedStrings", "sharedStrings.xml")];
  return `${head}<Relationships xmlns="${packaged}/relationships">${[...sheets, ...others].join("")}</Relationships>`;
}

const stylesXml = [
  `${head}<styleSheet xmlns="${main}"><numFmts count="${formats.length}">`,
  ...formats.map((format, index) => `<numFmt numFmtId="${164 + index}" formatCode="${format}"/>`),
  '</numFmts><fonts count="1"><font/></fonts><fills count="1"><fill/></fills><borders count="1"><border/></borders>',
  `<cellStyleXfs count="1"><xf/></cellStyleXfs><cellXfs count="${formats.length + 1}"><xf/>`,
  ...formats.map((_, index) => `<xf numFmtId="${164 + index}" applyNumberFormat="1"/>`),
  "</cellXfs></styleSheet>",
].join("");

function stringsXml(strings: readonly string[]): string {
  const items = strings.map((text) => `<si><t xml:space="preserve">${escaped(text)}</t></si>`).join("");
  return `${head}<sst xmlns="${main}" count="${strings.length}" uniqueCount="${strings.length}">${items}</sst>`;
}

function sheetXml({ rows, merged = [] }: WorkbookSheet, strings: Map<string, number>, system: DateSystem): string {
  const lines = rows.map(
    (row, index) =>
      `<row r="${index + 1}">${row.map((cell, at) => cellXml(cell, `${columnName(at)}${index + 1}`, strings, system)).join("")}</row>`,
  );
  const merges =
    merged.length === 0
      ? ""
      : `<mergeCells count="${merged.length}">${merged.map((ref) => `<mergeCell ref="${ref}"/>`).join("")}</mergeCells>`;
  return `${head}<worksheet xmlns="${main}"><sheetData>${lines.join("")}</sheetData>${merges}</worksheet>`;
}

function cellXml(cell: WorkbookCell, ref: string, strings: Map<string, number>, system: DateSystem): string {
  if (cell === null) return "";
  if ("number" in cell) return `<c r="${ref}"><v>${cell.number}</v></c>`;
  if ("day" in cell) return `<c r="${ref}" s="${formats.indexOf(cell.as) + 1}"><v>${cell.day + daysBefore1970[system]}</v></c>`;
  const held = strings.get(cell.text) ?? strings.size;
  strings.set(cell.text, held);
  return `<c r="${ref}" t="s"><v>${held}</v></c>`;
}

/** @example columnName(27) // => "AB" */
export function columnName(index: number): string {
  const letter = String.fromCharCode(65 + (index % 26));
  return index < 26 ? letter : columnName(Math.floor(index / 26) - 1) + letter;
}

const escaped = (text: string) => text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");
