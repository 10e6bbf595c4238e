import { readFileSync } from "node:fs";
import { emptyMapping, type Mapping, parseMapping } from "@/lib/intake";
import type { Planted } from "./integration/identifier-hunt";

/** The raw files of the invented unit, children before the segments that they belong to. */
export const rawFiles = [
  "raw-visits.csv",
  "raw-events.csv",
  "raw-scores.csv",
  "raw-body-measures.csv",
  "raw-workbook.xlsx",
  "raw-one-sheet.csv",
] as const;
export type RawFile = (typeof rawFiles)[number];

export const cleanTwin = (file: RawFile): string => file.replace(/\.(?=csv$|xlsx$)/, ".clean.");

const oneSheet = parseMapping(JSON.parse(readFileSync("demo-data/raw-one-sheet.mapping.json", "utf8")));

/** What a person answers about a raw file, so that it goes in with its faults set aside. */
export const answered: Readonly<Record<RawFile, Mapping>> = {
  "raw-visits.csv": emptyMapping,
  "raw-events.csv": { ...emptyMapping, values: { sequela: { temporry: "temporary" } } },
  "raw-scores.csv": emptyMapping,
  "raw-body-measures.csv": emptyMapping,
  "raw-workbook.xlsx": { ...emptyMapping, answers: { "implant-out-unhealed": "planned" } },
  "raw-one-sheet.csv": {
    ...oneSheet,
    values: { ...oneSheet.values, osteotomyTechnique: { "Mulitple dril hole": "drill-and-osteotome" } },
    answers: { "ids-differ-by-zeros": "different", "premature-consolidation-or-slip": "slip", "blank-consolidation": "not-recorded" },
  },
};

const letters = (text: string) => text.replace(/[^\p{L}\p{N}]/gu, "").length;

/** Names, numbers and dates of the raw files; what is too short to tell from chance is left to the others of its row. */
export function plantedInRawFiles(): Planted {
  const { identifiers } = JSON.parse(readFileSync("demo-data/planted-identifiers.json", "utf8")) as {
    identifiers: { kind: string; as: string[] }[];
  };
  const of = (...kinds: string[]) => [...new Set(identifiers.filter(({ kind }) => kinds.includes(kind)).map(({ as }) => as[0] ?? ""))];
  return {
    names: of("surname", "full-name", "first-name", "surgeon", "email").filter((name) => letters(name) >= 4),
    numbers: of("hospital-number", "nhs-number", "phone", "serial-number").filter((number) => letters(number) >= 6),
    dates: of("date-of-birth", "surgery-date").map((iso) => {
      const [year = 0, month = 0, day = 0] = iso.split("-").map(Number);
      return { year, month, day };
    }),
  };
}
