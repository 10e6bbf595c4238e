import { consentLetters } from "./trade-words";

/** What a person answers about the raw sheet, in the form of a saved mapping: columns that match by themselves needn't be named. */
export const rawMapping = {
  columns: {},
  units: {},
  dates: "dmy",
  decimal: ",",
  values: {
    device: { "Mag nail": "magnetic-nail" },
    permittedUse: Object.fromEntries(Object.entries(consentLetters).map(([code, letter]) => [letter, code])),
  },
  answers: {},
} as const;
