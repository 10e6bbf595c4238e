import type { SegmentRow } from "@/lib/codebook";
import { fold } from "@/lib/codebook";
import { daysPerMonth } from "../cells/per-unit";
import type { HeaderUnit } from "../match/header-unit";
import { between } from "./segment-fact";

type Clock = {
  readonly id: string;
  readonly from: "surgeryDay" | "distractionStartDay" | "distractionEndDay";
  readonly to: "consolidationDay" | "fixatorRemovalDay" | "fullWeightBearingDay" | "distractionEndDay";
};

const clocks: readonly Clock[] = [
  { id: "surgery-to-consolidation", from: "surgeryDay", to: "consolidationDay" },
  { id: "distraction-to-consolidation", from: "distractionStartDay", to: "consolidationDay" },
  { id: "maturation", from: "distractionEndDay", to: "consolidationDay" },
  { id: "fixator", from: "surgeryDay", to: "fixatorRemovalDay" },
  { id: "weight-bearing", from: "surgeryDay", to: "fullWeightBearingDay" },
  { id: "distraction", from: "distractionStartDay", to: "distractionEndDay" },
];
/** The clock that a header means; the others mean surgery to consolidation. */
const meant: Readonly<Record<string, string>> = {
  efi: "fixator",
  "external fixation index": "fixator",
  "maturation index": "maturation",
  "distraction index": "distraction",
};
const relativeTolerance = 0.02;

export type TypedIndex = { readonly value: number; readonly decimals: number; readonly unit: HeaderUnit | null; readonly words: string };

/** Whether an index typed in a file is the one that the row's days and gain give; else the clocks that it fits. `null`: nothing to compare. */
export function compareIndex(row: SegmentRow, typed: TypedIndex): { agrees: true } | { agrees: false; fits: readonly string[] } | null {
  const known = clocks.flatMap((clock) => {
    const days = between(row[clock.from], row[clock.to]);
    return days === null || row.gainMm === null || row.gainMm <= 0 ? [] : [{ id: clock.id, daysPerCm: (days * 10) / row.gainMm }];
  });
  const wanted = meant[fold(typed.words)] ?? "surgery-to-consolidation";
  const fits = known.filter(({ daysPerCm }) => isSame(daysPerCm, typed)).map(({ id }) => id);
  if (fits.includes(wanted)) return { agrees: true };
  return known.some(({ id }) => id === wanted) ? { agrees: false, fits } : null;
}

function isSame(daysPerCm: number, { value, decimals, unit }: TypedIndex): boolean {
  const lastDigit = 0.5 * 10 ** -decimals;
  const near = (computed: number) => Math.abs(computed - value) <= Math.max(lastDigit + 1e-9, relativeTolerance * computed);
  if (unit === "days/cm") return near(daysPerCm);
  if (unit === "months/cm") return near(daysPerCm / daysPerMonth);
  return near(daysPerCm) || near(daysPerCm / daysPerMonth);
}
