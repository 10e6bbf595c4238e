import type { FindingCode } from "@/lib/codebook";

/** Facts of a finding: names of the codebook, numbers and limits; never a cell's text. */
export type About = Readonly<Record<string, string | number>>;
export type Wording = { readonly expected: string; readonly mend: string };
type Words = Wording | ((about: About) => Wording);

const words: Readonly<Record<FindingCode, Words>> = {
  "empty-file": { expected: "a table with headers and rows", mend: "Export the sheet again and bring that file." },
  "not-a-table": {
    expected: "a workbook (.xlsx), or text with comma, semicolon or tab between the cells",
    mend: "In the spreadsheet choose Save as, .xlsx or CSV, and bring that file.",
  },
  "too-large": { expected: "at most 64 MB", mend: "Bring the sheet in parts, by year for instance: parts join by local number and day." },
  "too-many-rows": {
    expected: "at most 200 000 rows",
    mend: "Bring the sheet in parts, by year for instance: parts join by local number and day.",
  },
  "too-many-columns": { expected: "at most 300 columns", mend: "Delete the columns that hold no case data and bring the file again." },
  "cell-too-long": {
    expected: "at most 10 000 characters in a cell",
    mend: "Look at that row: a quotation mark left open, or a document pasted into a cell.",
  },
  "unreadable-encoding": { expected: "text in UTF-8, UTF-16 or Windows-1252", mend: "Save the sheet again as CSV UTF-8." },
  "unclosed-quote": {
    expected: "every quotation mark closed, and doubled inside a quoted cell",
    mend: "Close or delete the quotation mark that opens in this row; nothing of the file was read.",
  },
  "ragged-row": ({ columns }) => ({
    expected: `${columns} cells, as many as there are headers`,
    mend: "Look for a delimiter or line break inside a cell of this row; put such a cell in quotation marks.",
  }),
  "no-header": { expected: "a row of headers above the data", mend: "Put the headers into the first row; the template shows them." },
  "header-only": { expected: "at least one row below the headers", mend: "Export the sheet again with its rows." },
  "two-columns-one-field": ({ others }) => ({
    expected: "one column a field",
    mend: `Choose which of them fills the field (the other: ${others}) and drop or map the other one.`,
  }),
  "no-local-id": {
    expected: "a column with the unit’s own number of the patient",
    mend: "Say which column holds it. Without it no row can be joined to a patient.",
  },
  "encoding-guessed": {
    expected: "a file that says its encoding",
    mend: "Check a word with an accent in the sample rows; save as CSV UTF-8 if it looks wrong.",
  },
  "blank-header": { expected: "a header above each column", mend: "Give the column a header, or leave it: it is dropped." },
  "title-row-skipped": { expected: "headers in the first row", mend: "Nothing to do: the row was passed over." },
  "column-dropped": ({ why }) => ({ expected: "a header that means a field of the codebook", mend: `${why}` }),
  "date-order-unknown": {
    expected: "dates of which one at least has a day above 12",
    mend: "Say whether the day or the month comes first (dates: dmy, mdy or ymd).",
  },
  "decimal-mark-unknown": {
    expected: "numbers that tell the decimal mark from the mark of thousands",
    mend: "Say which it is (decimal: , or .).",
  },
  "unit-unknown": ({ units }) => ({
    expected: `a unit in the header: ${units}`,
    mend: "Say in which unit the column stands (units, by header), or write it into the header in brackets.",
  }),
  "value-unknown": ({ choices }) => ({
    expected: `one of: ${choices}`,
    mend: "Say which of them this spelling means (values, by field), or that it means not recorded.",
  }),
  "blank-consolidation": {
    expected: "a film column, or one answer for the whole file",
    mend: "Say what a blank consolidation date means: not-yet (not healed when last seen) or not-recorded.",
  },
  "not-a-number": ({ unit }) => ({
    expected: `a number${unit ? ` of ${unit}` : ""}`,
    mend: "Type the number alone, or leave the cell blank if it isn’t known.",
  }),
  "not-a-date": ({ order }) => ({
    expected: order ? `a date (${order})` : "a date",
    mend: "Type the whole date, day, month and year, or leave the cell blank if it isn’t known.",
  }),
  "not-a-code": ({ choices }) => ({
    expected: `one of: ${choices}`,
    mend: "Type one of these, or leave the cell blank if it isn’t known.",
  }),
  "out-of-hard-range": ({ low, high, unit, what }) => ({
    expected: `${what ? `${what} ` : ""}from ${low} to ${high}${unit ? ` ${unit}` : ""}`,
    mend: "Look at the record and type what it says; check the unit.",
  }),
  "date-impossible": ({ why }) => ({ expected: "a day that exists", mend: why ? `${why}` : "Look at the record and type the day again." }),
  "date-in-future": { expected: "a day not later than today", mend: "Look at the year; a planned day isn’t kept." },
  "required-missing": ({ why }) => ({
    expected: why ? `${why}` : "a value: without it the row can’t be placed",
    mend: "Fill the cell and bring the row again.",
  }),
  "number-lost-to-spreadsheet": {
    expected: "the number or word as it was typed",
    mend: "The spreadsheet changed it (to a date, or to powers of ten) and the digits are lost: set the column to Text and type it again from the record.",
  },
  "out-of-usual-range": ({ low, high, unit, what }) => ({
    expected: `${what ? `${what} ` : ""}usually from ${low} to ${high}${unit ? ` ${unit}` : ""}`,
    mend: "Kept. Check it against the record; the range tests typing, not care.",
  }),
  "cm-typed-as-mm": ({ unit }) => ({
    expected: `${unit}, as in the rest of the column`,
    mend: "Trap: centimetres in a column of millimetres. Kept as typed: if it is centimetres, type it ten times larger.",
  }),
  "months-typed-as-days": {
    expected: "days, as in the rest of the column",
    mend: "Trap: months in a column of days. Kept as typed: if it is months, type days or the date.",
  },
  "day-and-month-swapped": {
    expected: "a day in order with the row’s other days",
    mend: "Trap: day and month exchanged. With the two exchanged this date falls in order: check it against the record.",
  },
  "dial-for-film": {
    expected: "length measured on film",
    mend: "Trap: the figure equals rate × days exactly, so it looks like the count of the dial. Type the length on film at the end of distraction.",
  },
  "months-converted": { expected: "days", mend: "Nothing to do: months were taken as 30.4375 days and rounded." },
  "age-banded": { expected: "an age below 90", mend: "Nothing to do: 90 stands for 90 and over." },
  "days-out-of-order": ({ first, second }) => ({
    expected: `${first} not after ${second}`,
    mend: "Check both dates against the record; look first for day and month exchanged or last year’s number.",
  }),
  "one-row-two-sides": {
    expected: "left or right: one row a bone",
    mend: "Make two rows of it, one a side, each with its own gain and dates.",
  },
  "which-segment": {
    expected: "a bone, side and, where the patient has several, surgery date or episode that is held or in these files",
    mend: "Add the surgery date, or bring the sheet of segments first.",
  },
  "line-differs": {
    expected: "one patient’s rows all with dates, or all without",
    mend: "Fill in the surgery date, or bring this patient’s rows from one kind of sheet.",
  },
  "duplicate-row": ({ other }) => ({ expected: "each segment once in a file", mend: `Delete one of the two: row ${other} says the same.` }),
  "fixator-event-without-fixator": {
    expected: "a fixator among the device’s parts",
    mend: "Correct the device, or leave the fixator’s cell blank.",
  },
  "stroke-without-nail": { expected: "a nail as device where a stroke stands", mend: "Correct the device, or leave the stroke blank." },
  "gain-over-bone": {
    expected: "a gain of at most 150 % of the bone’s length before",
    mend: "Check the unit of both: one of them is probably in the other’s.",
  },
  "premature-consolidation-or-slip": {
    expected: "consolidation after the end of distraction",
    mend: "Say what it is: premature (it healed too early: kept as an event, the date leaves the index) or slip (a slip of typing: the date is left out).",
  },
  "implant-out-unhealed": {
    expected: "a reason where implant or frame came out before the bone was healed",
    mend: "Say why: infection, breakage, exchange, intolerance, planned (a nail or plate took over) or other.",
  },
  "gain-over-stroke": {
    expected: "a gain of at most the nail’s stroke",
    mend: "Kept. Check both; a nail rewound or exchanged, or a film not calibrated, explains it.",
  },
  "sides-unlike": ({ other, by }) => ({
    expected: "two sides of one patient within 18 mm",
    mend: `Kept. ${by} mm apart from row ${other}: check the gain of both sides.`,
  }),
  "gain-against-course": ({ what }) => ({ expected: `${what}`, mend: "Kept. Check the gain and the visits against the films." }),
  "no-surgery-date": {
    expected: "a surgery date",
    mend: "Kept by its year alone: no day of this patient can be counted between two operations. Fill in the date if you have it.",
  },
  "reamed-not-over-nail": { expected: "a canal reamed at least 2 mm wider than the nail", mend: "Kept. Check both diameters." },
  "index-disagrees": ({ fits }) => ({
    expected: "the index that the row’s own days and gain give",
    mend: fits
      ? `Not kept. The figure fits another clock: ${fits}.`
      : "Not kept. It fits none of the clocks: check the dates and the gain.",
  }),
  "weight-bearing-before-consolidation": { expected: "full weight bearing not before consolidation", mend: "Kept. Check both dates." },
  "follow-up-before-consolidation": {
    expected: "last seen not before consolidation",
    mend: "Kept. Check both dates: a film may have been read later.",
  },
  "repeats-conflict": ({ other }) =>
    other === undefined
      ? {
          expected: "the same value in two columns of one patient and day",
          mend: "Make the two agree, or give each its own date: another column of this row says otherwise of the same day.",
        }
      : {
          expected: "the same value in every row of one patient or segment",
          mend: `Make the two agree: row ${other} says otherwise.`,
        },
  "ids-differ-by-zeros": ({ other }) => ({
    expected: "numbers that differ by more than leading zeros",
    mend: `Say whether this row and row ${other} are the same patient or different ones.`,
  }),
  "near-duplicate": ({ days, other }) => ({
    expected: "operations on one bone more than 30 days apart",
    mend: `${days} days from ${other ? `that of row ${other}` : "one already held"}: say whether it is the same (date corrected) or new.`,
  }),
  "age-against-year": { expected: "ages that grow with the years", mend: "Kept. Check age and surgery date of this patient’s rows." },
  "sex-changed": { expected: "the sex already held", mend: "Kept as the file says. Check whether two patients share this number." },
  "changed-since-last": ({ fields }) => ({
    expected: "what is held",
    mend: `Nothing to do: the new value is kept, the old one stays in the history (${fields}).`,
  }),
  "already-held": { expected: "something new", mend: "Nothing to do: the row is held as it is." },
  "identifier-in-cell": ({ kind }) => ({
    expected: "no name, number, address or birth date of a person",
    mend: `Take it out of this cell (${kind}); the row stays aside until then.`,
  }),
  "identifier-in-header": ({ kind }) => ({
    expected: "a header that names no person",
    mend: `Change the header (${kind}); the column is dropped until then.`,
  }),
  "free-text-in-code": ({ choices }) => ({
    expected: `one of: ${choices}`,
    mend: "Code what the text says and take the text out of this cell; text is never kept.",
  }),
  "identifier-suspected": ({ kind, kept }) => ({
    expected: "no name, number, address or birth date of a person",
    mend: kept
      ? `Look at it (${kind}). Kept as the ${kept} typed: if it is a person’s, clear the cell or drop the column.`
      : `Look at it (${kind}); nothing of it is sent as text.`,
  }),
};

/** What a finding expected and how it is mended. All wording of intake stands here, apart from the facts. */
export function wordingOf(code: FindingCode, about: About): Wording {
  const entry = words[code];
  return typeof entry === "function" ? entry(about) : entry;
}
