import { detectInHeader } from "../detect";
import { finding } from "../findings/finding";
import type { SheetMatch } from "../match/column-match";
import { matchSheet } from "../match/match-sheet";
import type { Finding, LengthUnit, Mapping, Sheet } from "../types";
import { codeColumns } from "./coded-columns";
import { dropWording } from "./drop-wording";
import { kindsHeld } from "./holds";
import { knownPersons } from "./known-persons";
import { type Plan, planColumns } from "./plan-columns";
import type { Dropped } from "./prepared";
import { suspicions, withKnownHeaders, words } from "./suspicious-columns";

export type PreparedColumns = {
  readonly sheet: Sheet;
  readonly match: SheetMatch;
  readonly plan: Plan;
  readonly findings: readonly Finding[];
  readonly dropped: readonly Dropped[];
  /** No column names the patient: no row of the file can be read. */
  readonly refused: boolean;
  /** Names and numbers that the files show to be of persons. */
  readonly known: () => ReadonlySet<string>;
};

/** Matches every sheet's columns, plans how they are read, and says what is dropped and what must be asked. */
export async function prepareSheets(
  sheets: readonly Sheet[],
  mappingOf: (file: string) => Mapping,
  { lengths, signal }: { readonly lengths: LengthUnit | null; readonly signal: AbortSignal | null },
): Promise<readonly PreparedColumns[]> {
  const matched = sheets.map((sheet) => ({ sheet, match: matchSheet(sheet, mappingOf(sheet.file)) }));
  // columns are judged and read by their different cells
  for (const { sheet, match } of matched) {
    const read = match.columns.flatMap(({ index, target }) => (target ? [index] : []));
    await codeColumns(sheet, read, signal);
  }
  const known = knownPersons(matched);
  return matched.map(({ sheet, match }) => prepareColumns(sheet, match, { mapping: mappingOf(sheet.file), lengths, known }));
}

type Options = { readonly mapping: Mapping; readonly lengths: LengthUnit | null; readonly known: () => ReadonlySet<string> };

function prepareColumns(sheet: Sheet, matched: SheetMatch, { mapping, lengths, known }: Options): PreparedColumns {
  const match = withKnownHeaders(sheet, matched, known);
  const plan = planColumns(sheet, match, { dates: mapping.dates, decimal: mapping.decimal, lengths });
  const refused = !match.columns.some(({ target }) => target?.field === "localId");
  const { file } = sheet;
  const dropped = match.columns.flatMap(({ header, index, dropped: why }) =>
    why === null ? [] : [{ file, header, why, holds: kindsHeld(sheet, index) }],
  );
  const findings = [
    ...(refused ? [finding("no-local-id", { file }, "no column that means it")] : []),
    ...suspicions(sheet, plan.columns, known),
    ...dropped.map((column) => droppedFinding(column, known)),
  ];
  return { sheet, match, plan, findings, dropped, refused, known };
}

function droppedFinding({ file, header, why, holds }: Dropped, known: () => ReadonlySet<string>): Finding {
  if (why !== "identifier-in-header") {
    const held = holds.length === 0 ? "" : ` Its cells hold: ${words(holds.map((kind) => ({ kind })))}.`;
    return finding("column-dropped", { file, column: header }, "a column that isn’t kept", { why: `${dropWording[why]}${held}` });
  }
  const kind = words(detectInHeader(header, { known: known() }));
  return finding("identifier-in-header", { file, column: header }, "a header that looks like a person’s name or number", { kind });
}
