import { captionFrom } from "../figure/caption";
import type { CaptionOptions, Figure } from "../figure/figure";
import { excludedIn } from "../figure/source";
import { totalText } from "../say/excluded";
import { shownUnit, unitsFor } from "../say/shown-unit";
import { count, estimate, number, span, tableFrom, words } from "../table/columns";
import type { DataTable } from "../table/data-table";
import { layoutAgreement } from "./layout-agreement";
import type { AgreementGroup, AgreementRecord } from "./record";
import { differenceText } from "./say";

/** Limits of agreement of two readings. */
export const agreementFigure: Figure<AgreementRecord> = {
  id: "limits-of-agreement",
  layout: layoutAgreement,
  caption: captionOfAgreement,
  table: tableOfAgreement,
  units: ({ unit }) => unitsFor(unit),
};

function captionOfAgreement(record: AgreementRecord, options: CaptionOptions = {}): string {
  const limits = record.groups.some((group) => group.limits !== null);
  const reading = [
    `Difference: ${differenceText(record)}; bias with its 95 % interval, clustered by patient (CR2, Satterthwaite)`,
    limits
      ? "Limits of agreement: bias ± 1.96 standard deviations of one difference, between and within patients; their 95 % intervals: the chance of the bias and of the standard deviation, by patient"
      : null,
  ];
  return captionFrom(
    record,
    { what: `Limits of agreement: ${differenceText(record)}`, counts: totalText(record.groups), reading, groups: record.groups },
    options,
  );
}

function tableOfAgreement({ unit: own, groups }: AgreementRecord, asked?: string): DataTable {
  const unit = shownUnit(own, asked);
  return tableFrom<AgreementGroup>(
    [
      words("group", "Group", (group) => group.label),
      count("segments", "Segments", (group) => group.segments),
      count("patients", "Patients", (group) => group.patients),
      count("measured", "Measured", (group) => group.n),
      count("excluded", "Left out", excludedIn),
      ...estimate<AgreementGroup>("bias", "Bias", unit, (group) => group.bias),
      number("median", "Median", unit, ({ spread }) => spread?.median),
      span("spread", "Nine in ten", unit, ({ spread }) => [spread?.p5 ?? null, spread?.p95 ?? null]),
      ...estimate<AgreementGroup>("limit-lower", "Lower limit of agreement", unit, ({ limits }) => limits?.lower),
      ...estimate<AgreementGroup>("limit-upper", "Upper limit of agreement", unit, ({ limits }) => limits?.upper),
    ],
    groups,
  );
}
