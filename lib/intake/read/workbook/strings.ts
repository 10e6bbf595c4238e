import { piecesOf } from "./pieces";
import { walkXml } from "./xml";

/** The shared strings of a workbook: runs of one string joined, readings beside East Asian text left out (ISO/IEC 29500-1, 18.4). */
export function* sharedStrings(part: Uint8Array): Generator<readonly string[]> {
  for (const piece of piecesOf(part, "si").elements) yield stringsIn(piece);
}

function stringsIn(piece: string): readonly string[] {
  const strings: string[] = [];
  const text = textOfRuns();
  walkXml(`<d>${piece}</d>`, {
    open: (name) => {
      if (name === "si") text.start();
      else text.open(name);
    },
    text: text.add,
    close: (name) => {
      if (name === "si") strings.push(text.taken());
      else text.close(name);
    },
  });
  return strings;
}

/** Gathers the text of `t` elements outside `rPh`. */
export function textOfRuns() {
  let said = "";
  let inText = false;
  let inReading = false;
  return {
    start: () => {
      said = "";
    },
    open: (name: string) => {
      if (name === "t") inText = true;
      else if (name === "rPh") inReading = true;
    },
    add: (text: string) => {
      if (inText && !inReading) said += text;
    },
    close: (name: string) => {
      if (name === "t") inText = false;
      else if (name === "rPh") inReading = false;
    },
    taken: () => unescaped(said),
  };
}

/** Control characters stand as `_x000D_` (ISO/IEC 29500-1, 22.9.2.19). */
export function unescaped(text: string): string {
  if (!text.includes("_x")) return text;
  return text.replace(/_x([0-9A-Fa-f]{4})_/g, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)));
}
