import { type Field, fieldsOf, snake, type TableName, type TemplateName, templateNames } from "@/lib/codebook";
import { writeCsv } from "../csv/write-csv";

const naming = ["local_id"];
const segmentName = ["bone", "side", "surgery_day"];
const madeElsewhere: ReadonlySet<string> = new Set(["person", "bone", "side", "surgeryDay"]);
const heights = ["height_pre_op", "final_height"];
const numbered = [1, 2, 3].flatMap((n) => [`complication_${n}`, `complication_${n}_date`, `complication_${n}_treatment`]);

/**
 * An empty sheet with the headers of the codebook: one a table, or one sheet with a row a segment, which holds person, body measures before
 * and final, and three complications too.
 * @example templateCsv("scores") // => "local_id,unit,score_code,score_day,score_value\r\n"
 */
export function templateCsv(name: TemplateName | "one-sheet"): string {
  return writeCsv([name === "one-sheet" ? oneSheet() : ofTable(templateNames[name])]);
}

function oneSheet(): string[] {
  return [
    ...naming,
    "unit",
    "date_of_birth",
    ...own("person", ["unit"]),
    ...segmentName,
    "surgeon_name",
    ...own("segment"),
    ...heights,
    ...numbered,
  ];
}

function ofTable(table: TableName): string[] {
  const name = table === "segment" || table === "visit" || table === "event" ? segmentName : [];
  const episode = table === "visit" || table === "event" ? ["episode"] : [];
  const people = table === "segment" ? ["date_of_birth", "surgeon_name"] : [];
  return [...naming, "unit", ...name, ...episode, ...people, ...own(table, ["unit"])];
}

/** Template headers of the fields that a file can hold. */
function own(table: TableName, without: readonly string[] = []): string[] {
  const kept = ([id, field]: readonly [string, Field]) => !field.madeByStrip && !madeElsewhere.has(id) && !without.includes(id);
  return fieldsOf(table)
    .filter(kept)
    .map(([id]) => snake(id));
}
