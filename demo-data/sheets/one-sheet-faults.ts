import type { Named, Plant } from "./faults";

const filled = (row: Named, ...headers: readonly string[]) => headers.every((header) => (row[header] ?? "") !== "");
const number = (text: string | undefined) => Number((text ?? "").replace(",", "."));
const day = (text: string | undefined) => (text ?? "").split("/").reverse().join("");
const part = (text: string | undefined, index: number) => (text ?? "").split("/")[index] ?? "";
/** A healed femur on a nail, without a typed index that would disagree as well. */
const plain = (row: Named) =>
  row.Implant === "Mag nail" &&
  row.Segment === "Femur" &&
  filled(row, "Date consolidated", "Last distraction", "FWB (days)") &&
  row.HI === "";
const alone = (row: Named, rows: readonly Named[]) => rows.filter((other) => other["Hosp No"] === row["Hosp No"]).length === 1;

/** Fifteen slips of the kind that any sheet holds: seven of a cell, six of a row, two across rows. */
export const oneSheetFaults: readonly Plant[] = [
  {
    code: "date-impossible",
    column: "Date consolidated",
    mend: "No month has this day: type the date of the film.",
    fits: plain,
    typed: (row) => `31/02/${part(row["Date consolidated"], 2)}`,
  },
  {
    code: "date-in-future",
    column: "Last seen",
    mend: "The year's last two digits were swapped: 2025, not 2052.",
    fits: (row) => filled(row, "Date consolidated") && part(row["Last seen"], 2) === "2025",
    typed: (row) => (row["Last seen"] ?? "").replace("/2025", "/2052"),
  },
  { code: "not-a-number", column: "Gain (cm)", mend: "Type the gain measured on the film.", fits: plain, typed: () => "see film" },
  {
    code: "value-unknown",
    column: "Osteotomy",
    mend: "Multiple drill hole, misspelt: type it anew or say in the mapping what it means.",
    fits: (row) => row.Osteotomy === "Multiple drill hole",
    typed: () => "Mulitple dril hole",
  },
  {
    code: "out-of-hard-range",
    column: "Gain (cm)",
    mend: "The decimal comma was left out: centimetres, not millimetres.",
    fits: (row) => plain(row) && number(row["Gain (cm)"]) > 4 && !(row["Gain (cm)"] ?? "").endsWith(",0"),
    typed: (row) => (row["Gain (cm)"] ?? "").replace(",", ""),
  },
  {
    code: "required-missing",
    column: "Side",
    mend: "Type the side that was operated on.",
    fits: (row, rows) => alone(row, rows),
    typed: () => "",
  },
  {
    code: "identifier-in-cell",
    column: "Reason stopped",
    mend: "A note with a telephone number slipped in: clear the cell.",
    fits: (row) => filled(row, "Date consolidated", "Tel") && row["Reason stopped"] === "",
    typed: (row) => `ring ${row.Tel}`,
  },
  {
    code: "days-out-of-order",
    column: "Start of distraction",
    mend: "The year was that before: distraction can't begin before surgery.",
    fits: (row) => filled(row, "Date consolidated") && row.HI === "" && part(row["Date of op"], 2) === part(row["Start of distraction"], 2),
    typed: (row) => (row["Start of distraction"] ?? "").replace(/\d{4}$/, (year) => String(Number(year) - 1)),
  },
  {
    code: "one-row-two-sides",
    column: "Side",
    mend: "One row a segment: type this row's own side, and a row for the other.",
    fits: (row, rows) => alone(row, rows),
    typed: () => "both",
  },
  {
    code: "premature-consolidation-or-slip",
    column: "Date consolidated",
    mend: "A slip of the month: the bone was still being drawn apart on that day.",
    fits: (row) => plain(row) && day(row["Last distraction"]) > day(row["Start of distraction"]),
    typed: (row) => dayBefore(row["Last distraction"] ?? ""),
  },
  {
    code: "months-typed-as-days",
    column: "FWB (days)",
    mend: "Months were typed in a column of days.",
    fits: (row) => filled(row, "Date consolidated") && number(row["FWB (days)"]) > 150 && number(row["FWB (days)"]) < 330,
    typed: (row) => String(Math.round(number(row["FWB (days)"]) / 30.4375)),
  },
  {
    code: "gain-over-stroke",
    column: "Stroke (mm)",
    mend: "The nail's stroke is 80 mm.",
    fits: (row) => row["Stroke (mm)"] === "80" && number(row["Gain (cm)"]) > 5.5 && filled(row, "Date consolidated"),
    typed: () => "50",
  },
  {
    code: "index-disagrees",
    column: "HI",
    mend: "Two digits were swapped: the index that the dates and the gain give is the other.",
    fits: (row) => number(row.HI) > 20 && Math.abs(number(swapped(row.HI)) - number(row.HI)) > 12,
    typed: (row) => swapped(row.HI),
  },
  {
    code: "ids-differ-by-zeros",
    column: "Hosp No",
    mend: "The spreadsheet took away the leading zero: type the number as text.",
    fits: (row, rows) => rows.filter((other) => other["Hosp No"] === row["Hosp No"]).length === 2 && filled(row, "Date consolidated"),
    typed: (row) => (row["Hosp No"] ?? "").replace(/^0+/, ""),
  },
  {
    code: "duplicate-row",
    column: null,
    mend: "The same row stands twice: delete one.",
    fits: (row, rows) => alone(row, rows) && filled(row, "Date consolidated"),
  },
];

const swapped = (text: string | undefined) => (text ?? "").replace(/^(\d)(\d)/, "$2$1");

/** The day before a date as typed, for a date that is not the first of its month; a week earlier else. */
function dayBefore(text: string): string {
  const [dayOfMonth = "", ...rest] = text.split("/");
  return Number(dayOfMonth) > 1 ? [String(Number(dayOfMonth) - 1).padStart(2, "0"), ...rest].join("/") : text;
}
