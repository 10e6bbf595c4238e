import { detectInFileName, detectInHeader } from "../detect";
import { finding } from "../findings/finding";
import type { SheetMatch } from "../match/column-match";
import { matchSheet } from "../match/match-sheet";
import type { Finding, LengthUnit, Mapping, Sheet } from "../types";
import { dropWording } from "./drop-wording";
import { type Plan, planColumns } from "./plan-columns";
import type { Dropped } from "./prepared";

export type PreparedColumns = {
  readonly sheet: Sheet;
  readonly match: SheetMatch;
  readonly plan: Plan;
  readonly findings: readonly Finding[];
  readonly dropped: readonly Dropped[];
  /** No column names the patient: no row of the file can be read. */
  readonly refused: boolean;
};

/** Matches a sheet's columns, plans how they are read, and says what is dropped and what must be asked. */
export function prepareColumns(sheet: Sheet, mapping: Mapping, lengths: LengthUnit | null): PreparedColumns {
  const match = matchSheet(sheet, mapping);
  const plan = planColumns(sheet, match, { dates: mapping.dates, decimal: mapping.decimal, lengths });
  const refused = !match.columns.some(({ target }) => target?.field === "localId");
  const { file } = sheet;
  const dropped = match.columns.flatMap(({ header, dropped: why }) => (why === null ? [] : [{ file, header, why }]));
  const findings = [
    ...(refused ? [finding("no-local-id", { file }, "no column that means it")] : []),
    ...suspiciousNames(sheet),
    ...dropped.map(({ header, why }) =>
      why === "identifier-in-header"
        ? finding("identifier-in-header", { file, column: header }, "a header that looks like a person's name or number", {
            kind: kindsIn(header),
          })
        : finding("column-dropped", { file, column: header }, "a column that isn't kept", { why: dropWording[why] }),
    ),
  ];
  return { sheet, match, plan, findings, dropped, refused };
}

function kindsIn(header: string): string {
  return detectInHeader(header)
    .map(({ kind }) => kind.replaceAll("-", " "))
    .join(", ");
}

function suspiciousNames({ file }: Sheet): Finding[] {
  const kinds = detectInFileName(file).map(({ kind }) => kind.replaceAll("-", " "));
  return kinds.length === 0 ? [] : [finding("identifier-suspected", { file }, "the file's name", { kind: kinds.join(", ") })];
}
