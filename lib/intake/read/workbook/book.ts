import { textOf } from "./pieces";
import { unescaped } from "./strings";
import { attribute, walkXml } from "./xml";

type Parts = ReadonlyMap<string, Uint8Array>;
export type BookSheet = { readonly name: string; readonly hidden: boolean; readonly part: Uint8Array | null };
/** What a workbook holds: its sheets in their order, and the parts that their cells refer to. */
export type Book = {
  readonly sheets: readonly BookSheet[];
  readonly system: 1900 | 1904;
  readonly strings: Uint8Array | null;
  readonly styles: Uint8Array | null;
};
type Relation = { readonly type: string; readonly target: string };

/** A workbook's plan (ISO/IEC 29500-1, 18.2); `null` when the parts are none. @throws BrokenMarkup */
export function readBook(parts: Parts): Book | null {
  const main = [...relationsOf(parts, "").values()].find(({ type }) => type === "officeDocument")?.target ?? "xl/workbook.xml";
  const book = parts.get(main);
  if (!book) return null;
  const relations = relationsOf(parts, main);
  const of = (type: string) => parts.get([...relations.values()].find((relation) => relation.type === type)?.target ?? "") ?? null;
  const sheets: BookSheet[] = [];
  let system: 1900 | 1904 = 1900;
  walkXml(textOf(book), {
    open: (name, attributes) => {
      if (name === "workbookPr" && /^(?:1|true|on)$/.test(attribute(attributes(), "date1904") ?? "")) system = 1904;
      if (name !== "sheet") return;
      const given = attributes();
      const target = relations.get(attribute(given, "id") ?? "");
      const part = target?.type === "worksheet" ? (parts.get(target.target) ?? null) : null;
      sheets.push({ name: unescaped(attribute(given, "name") ?? ""), hidden: /hidden/i.test(attribute(given, "state") ?? ""), part });
    },
  });
  return { sheets, system, strings: of("sharedStrings"), styles: of("styles") };
}

/** Relations of a part by id; a type is the last word of its address, which differs between the two conformance classes. */
function relationsOf(parts: Parts, of: string): ReadonlyMap<string, Relation> {
  const [, folder = "", file = ""] = /^(.*\/)?([^/]*)$/.exec(of) ?? [];
  const part = parts.get(`${folder}_rels/${file}.rels`);
  const relations = new Map<string, Relation>();
  if (!part) return relations;
  walkXml(textOf(part), {
    open: (name, attributes) => {
      if (name !== "Relationship") return;
      const { Id = "", Type = "", Target = "" } = attributes();
      relations.set(Id, { type: Type.split("/").at(-1) ?? "", target: resolved(folder, Target) });
    },
  });
  return relations;
}

/** `../xl/worksheets/sheet1.xml` as named in `xl/` stands at `xl/worksheets/sheet1.xml`. */
function resolved(folder: string, target: string): string {
  const path: string[] = [];
  for (const step of `${target.startsWith("/") ? "" : folder}${target}`.split("/")) {
    if (step === "..") path.pop();
    else if (step !== "" && step !== ".") path.push(step);
  }
  return path.join("/");
}
