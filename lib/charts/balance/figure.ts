import { captionFrom } from "../figure/caption";
import type { CaptionOptions, Figure } from "../figure/figure";
import { count, tableFrom, words } from "../table/columns";
import { type DataTable, noValue } from "../table/data-table";
import { layoutBalance } from "./layout-balance";
import { type BalanceRecord, type BalanceRow, isUnlike, sorted, unlikeFrom } from "./record";
import { groupsText, sizeText, titleOfBalance } from "./rows";

/** Case-mix balance of two groups. */
export const balanceFigure: Figure<BalanceRecord> = {
  id: "case-mix-balance",
  layout: layoutBalance,
  caption: captionOfBalance,
  table: tableOfBalance,
  units: () => [""],
};

function captionOfBalance(record: BalanceRecord, options: CaptionOptions = {}): string {
  const unlike = record.rows.filter(isUnlike).length;
  const reading = [
    `Size of the standardised difference of what was there before, over what is recorded; above ${unlikeFrom} groups are called unlike (${unlike} of ${record.rows.length})`,
    "A treatment was chosen for a patient, not drawn by lot",
  ];
  return captionFrom(record, { what: titleOfBalance(record), counts: groupsText(record), reading }, options);
}

function tableOfBalance(record: BalanceRecord): DataTable {
  const [first, second] = record.groups;
  const valued = record.rows.some(({ values }) => values !== undefined);
  const value = (at: 0 | 1) => words<BalanceRow>(`value-${at}`, record.groups[at].label, ({ values }) => values?.[at] ?? noValue);
  return tableFrom<BalanceRow>(
    [
      words("field", "Field", ({ label }) => label),
      ...(valued ? [value(0), value(1)] : []),
      { id: "smd", head: "Standardised difference", align: "end", cell: (row) => (row.smd === null ? noValue : sizeText(row)) },
      words("unlike", "Unlike", (row) => (isUnlike(row) ? "yes" : row.smd === null ? noValue : "no")),
      count("recorded-0", `Recorded, ${first.label}`, ({ recorded }) => recorded[0]),
      count("recorded-1", `Recorded, ${second.label}`, ({ recorded }) => recorded[1]),
    ],
    sorted(record.rows),
  );
}
