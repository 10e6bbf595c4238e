import { detectInHeader } from "../detect";
import { finding } from "../findings/finding";
import type { SheetMatch } from "../match/column-match";
import { matchSheet } from "../match/match-sheet";
import { fieldOfTarget } from "../match/target";
import { turn } from "../pace";
import type { Finding, LengthUnit, Mapping, Sheet } from "../types";
import { tallyOf } from "./column-cells";
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
  // columns are judged by their different cells: counted first, a column a turn
  for (const each of matched) await tallyColumns(each, signal);
  const known = knownPersons(matched);
  return matched.map(({ sheet, match }) => prepareColumns(sheet, match, { mapping: mappingOf(sheet.file), lengths, known }));
}

async function tallyColumns({ sheet, match }: { readonly sheet: Sheet; readonly match: SheetMatch }, signal: AbortSignal | null) {
  for (const { index, target } of match.columns) {
    const field = target && fieldOfTarget(target);
    const isJudged = target?.table === "file" || field?.kind === "day" || field?.kind === "number" || field?.kind === "count";
    if (!isJudged) continue;
    tallyOf(sheet, index);
    await turn();
    signal?.throwIfAborted();
  }
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
    return finding("column-dropped", { file, column: header }, "a column that isn't kept", { why: `${dropWording[why]}${held}` });
  }
  const kind = words(detectInHeader(header, { known: known() }));
  return finding("identifier-in-header", { file, column: header }, "a header that looks like a person's name or number", { kind });
}
