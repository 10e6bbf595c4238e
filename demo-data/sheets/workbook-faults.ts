import type { Named, Plant } from "./faults";

const filled = (row: Named, ...headers: readonly string[]) => headers.every((header) => (row[header] ?? "") !== "");
const blank = (row: Named, ...headers: readonly string[]) => headers.every((header) => (row[header] ?? "") === "");
const number = (text: string | undefined) => Number(text ?? "");
const nail = (row: Named) => row["Implant type"] === "Magnetic nail";
const healed = (row: Named) => filled(row, "Date healed", "Distraction finished", "Last unhealed x-ray");
const ownRows = (row: Named, rows: readonly Named[]) => rows.filter((other) => other["Hosp No"] === row["Hosp No"]);

/** Ten slips of rows, and across rows, in the workbook. */
export const workbookFaults: readonly Plant[] = [
  {
    code: "cm-typed-as-mm",
    column: "Gain (mm)",
    mend: "Centimetres in a column of millimetres.",
    fits: (row) => nail(row) && healed(row) && number(row["Gain (mm)"]) > 45,
    typed: (row) => String(number(row["Gain (mm)"]) / 10),
  },
  {
    code: "sides-unlike",
    column: "Gain (mm)",
    mend: "The two sides were lengthened alike: this gain was mistyped.",
    fits: (row, rows) =>
      nail(row) &&
      healed(row) &&
      row.Indication === "Short stature" &&
      ownRows(row, rows).length === 2 &&
      number(row["Gain (mm)"]) > 50 &&
      number(row["Gain (mm)"]) < 57 &&
      number(row["Stroke (mm)"]) === 80,
    typed: (row) => String(number(row["Gain (mm)"]) + 22),
  },
  {
    code: "reamed-not-over-nail",
    column: "Reamed to (mm)",
    mend: "Reamed at least 2 mm wider than the nail.",
    fits: (row) => nail(row) && filled(row, "Reamed to (mm)", "Nail size (mm)"),
    typed: (row) => String(number(row["Nail size (mm)"]) + 1),
  },
  {
    code: "weight-bearing-before-consolidation",
    column: "FWB date",
    mend: "Partial weight was meant: the date of full weight is later.",
    fits: (row) => healed(row) && filled(row, "FWB date"),
    typed: (row) => row["Last unhealed x-ray"] ?? "",
  },
  {
    code: "implant-out-unhealed",
    column: "Nail removal",
    mend: "The removal belongs to another row: clear the cell, or say why the nail came out unhealed.",
    fits: (row) => nail(row) && healed(row) && blank(row, "Nail removal", "Reason for removal"),
    typed: (row) => row["Last unhealed x-ray"] ?? "",
  },
  {
    code: "stroke-without-nail",
    column: "Stroke (mm)",
    mend: "A frame has no stroke: clear the cell.",
    fits: (row) => (row["Implant type"] ?? "").endsWith("fixator"),
    typed: () => "80",
  },
  {
    code: "fixator-event-without-fixator",
    column: "Complication 1",
    mend: "A nail has no pins: a superficial infection was meant, or another row.",
    fits: (row) => nail(row) && row["Complication 1"] === "none" && healed(row),
    typed: () => "Pin infection",
  },
  {
    code: "repeats-conflict",
    column: "Sex",
    mend: "The person's other row says otherwise: one of the two is wrong.",
    fits: (row, rows) => row === ownRows(row, rows)[1],
    typed: (row) => (row.Sex === "M" ? "F" : "M"),
  },
  {
    code: "follow-up-before-consolidation",
    column: "Last review",
    mend: "The date of an earlier visit: type that of the last one.",
    fits: (row) => healed(row) && blank(row, "Nail removal", "Frame removal"),
    typed: (row) => row["Last unhealed x-ray"] ?? "",
  },
  {
    code: "out-of-usual-range",
    column: "Planned gain (mm)",
    mend: "More than is planned for one bone in stature lengthening: two digits were swapped or the sum of both bones was typed.",
    fits: (row) => row.Indication === "Short stature" && healed(row),
    typed: () => "96",
  },
];
