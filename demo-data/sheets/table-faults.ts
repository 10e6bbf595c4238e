import type { Named, Plant } from "./faults";

const has = (row: Named, header: string) => (row[header] ?? "") !== "";

/** `twice`: hospital numbers of persons who had one bone lengthened twice, so that a visit without its operation could belong to either. */
export const visitFaults = (twice: ReadonlySet<string>): readonly Plant[] => [
  {
    code: "number-lost-to-spreadsheet",
    column: "Cortices",
    mend: "Three of four, typed as 3/4, became a date: type 3 and format the column as text.",
    fits: (row) => row.Cortices === "3",
    typed: () => "03-Apr",
  },
  {
    code: "out-of-hard-range",
    column: "Knee rom",
    mend: "One nought too many: degrees, not tenths.",
    fits: (row) => row["Knee rom"] === "110",
    typed: () => "1100",
  },
  {
    code: "which-segment",
    column: "Op date",
    mend: "Type the date of the operation that this visit belongs to.",
    fits: (row) => has(row, "Cortices") && twice.has(row["Hosp No"] ?? ""),
    typed: () => "",
  },
  {
    code: "not-a-date",
    column: "Clinic date",
    mend: "Did not attend: there was no visit, delete the row or type the day.",
    fits: (row) => has(row, "VAS"),
    typed: () => "DNA",
  },
  {
    code: "not-a-code",
    column: "WB status",
    mend: "Type one of none, toe-touch, partial, full.",
    fits: (row) => row["WB status"] === "Partial",
    typed: () => "50",
  },
  {
    code: "identifier-in-header",
    column: "Painkillers",
    mend: "A header is kept with the mapping: take the name out of it.",
    fits: (row) => has(row, "Painkillers"),
    typed: () => "Painkillers - ask Mrs Quornaruthe",
    in: "header",
  },
];

export const eventFaults: readonly Plant[] = [
  {
    code: "free-text-in-code",
    column: "Complication",
    mend: "Type the complication alone; what else there is to say stays in the notes.",
    fits: (row) => row.Complication === "Equinus",
    typed: () => "could not get the heel down at six weeks and therapy was doubled",
  },
  {
    code: "identifier-in-cell",
    column: "Treatment",
    mend: "Take the name out: Physio.",
    fits: (row) => row.Treatment === "Physio",
    typed: (row) => `Physio with Mrs ${row.Surname}`,
  },
  {
    code: "date-in-future",
    column: "Onset",
    mend: "The year's last two digits were swapped.",
    fits: (row) => (row.Onset ?? "").endsWith("/2024"),
    typed: (row) => (row.Onset ?? "").replace("/2024", "/2042"),
  },
  {
    code: "value-unknown",
    column: "Sequela",
    mend: "Temporary, misspelt.",
    fits: (row) => row.Sequela === "Temporary",
    typed: () => "temporry",
  },
];

export const scoreFaults: readonly Plant[] = [
  {
    code: "not-a-code",
    column: "Score",
    mend: "Not on the unit's list of scores: type the code as listed, or add it in the settings.",
    fits: (row) => row.Score === "demo-function",
    typed: () => "demo-funktion",
  },
  {
    code: "not-a-number",
    column: "Value",
    mend: "No score was given: delete the row.",
    fits: (row) => has(row, "Value"),
    typed: () => "declined",
  },
];

export const bodyFaults: readonly Plant[] = [
  {
    code: "repeats-conflict",
    column: "Height (cm)",
    mend: "The same person was measured twice on one day with different results: keep the right one.",
    fits: (row) => Number(row["Height (cm)"]) > 150,
    typed: (row) => (Number(row["Height (cm)"]) + 10).toFixed(1),
    in: "copy",
  },
  {
    code: "out-of-hard-range",
    column: "Height (cm)",
    mend: "Metres in a column of centimetres.",
    fits: (row) => Number(row["Height (cm)"]) > 150,
    typed: (row) => (Number(row["Height (cm)"]) / 100).toFixed(2),
  },
  {
    code: "required-missing",
    column: "Date measured",
    mend: "Type the day on which the body was measured.",
    fits: (row) => has(row, "Height (cm)"),
    typed: () => "",
  },
];
