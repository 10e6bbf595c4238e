import { isBuiltInDateFormat, isDateFormat } from "./date-format";
import { attribute, walkXml } from "./xml";

/** For each cell style, whether it shows a number as a date (ISO/IEC 29500-1, 18.8). */
export function dateStyles(xml: string): readonly boolean[] {
  const formats = new Map<number, string>();
  const styles: boolean[] = [];
  let inCellStyles = false;
  walkXml(xml, {
    open: (name, attributes) => {
      if (name === "numFmt") formats.set(Number(attribute(attributes(), "numFmtId")), attribute(attributes(), "formatCode") ?? "");
      else if (name === "cellXfs") inCellStyles = true;
      else if (name === "xf" && inCellStyles) styles.push(isDate(Number(attribute(attributes(), "numFmtId") ?? 0), formats));
    },
    close: (name) => {
      if (name === "cellXfs") inCellStyles = false;
    },
  });
  return styles;
}

/** A format of the file's own stands before the built-in one of its number. */
function isDate(id: number, formats: ReadonlyMap<number, string>): boolean {
  const own = formats.get(id);
  return own === undefined ? isBuiltInDateFormat(id) : isDateFormat(own);
}
