import { captionFrom } from "../figure/caption";
import type { CaptionOptions, Figure } from "../figure/figure";
import { excludedIn } from "../figure/source";
import { totalText } from "../say/excluded";
import { shownUnit, unitsFor } from "../say/shown-unit";
import { count, estimate, span, tableFrom, words } from "../table/columns";
import type { DataTable } from "../table/data-table";
import { layoutProportion } from "./layout-proportion";
import type { ProportionGroup, ProportionRecord } from "./record";
import { derivedText, done } from "./say";

/** Proportion before and after, a line a patient, against its norm. */
export const proportionFigure: Figure<ProportionRecord> = {
  id: "proportion",
  layout: layoutProportion,
  caption: captionOfProportion,
  table: tableOfProportion,
  units: ({ unit }) => unitsFor(unit),
};

function captionOfProportion(record: ProportionRecord, options: CaptionOptions = {}): string {
  const norms = new Set(record.groups.flatMap(({ norm }) => (norm ? [norm.label] : [])));
  const several = record.groups.length > 1;
  const reading = [
    "A line a patient, from the value before (tick) to the value after",
    ...record.groups.flatMap((group) => derivedText(group).map((text) => (several ? `${group.label}: ${text}` : upper(text)))),
    norms.size === 0 ? "No norm is drawn: none was chosen, or none fits the way of measuring" : `Light band: ${[...norms].join("; ")}`,
    "Means with their 95 % interval",
  ];
  const what = `${record.definition.title}, before and after`;
  return captionFrom(record, { what, counts: totalText(record.groups, "person", done), reading, groups: record.groups }, options);
}

const upper = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

function tableOfProportion({ unit: own, groups }: ProportionRecord, asked?: string): DataTable {
  const unit = shownUnit(own, asked);
  const derived = (when: "beforeHow" | "afterHow") => (group: ProportionGroup) =>
    group.marks.filter((mark) => mark[when] === "derived").length;
  return tableFrom<ProportionGroup>(
    [
      words("group", "Group", (group) => group.label),
      count("patients", "Patients", (group) => group.patients),
      count("measured", "Before and after", (group) => group.n),
      count("excluded", "Left out", excludedIn),
      ...estimate<ProportionGroup>("before", "Before", unit, (group) => group.before),
      ...estimate<ProportionGroup>("after", "After", unit, (group) => group.after),
      ...estimate<ProportionGroup>("change", "Change", unit, (group) => group.change),
      count("derived-before", "Derived before", derived("beforeHow")),
      count("derived-after", "Derived after", derived("afterHow")),
      span("norm", "Norm", unit, ({ norm }) => [norm?.from ?? null, norm?.to ?? null]),
    ],
    groups,
  );
}
