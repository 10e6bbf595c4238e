import { decimals } from "../say/numbers";
import { type ClockUnit, daysPerMonth } from "../say/units";
import { figureTitle } from "./figure-text";
import { type HealingRecordForFigure, isHealing } from "./record";
import { totalText } from "./say";

export type CaptionOptions = { readonly unit?: ClockUnit /** The cohort in words. */; readonly cohort?: string };

/** The caption that goes with the figure wherever it goes: cohort, n, definition, interval, film interval, data, batch and reference. */
export function captionOf(record: HealingRecordForFigure, { unit = "days/cm", cohort = "all segments" }: CaptionOptions = {}): string {
  const sentences = [
    `${figureTitle(record)}; cohort: ${cohort}`,
    totalText(record.groups),
    `Definition: ${record.definition.sentence}`,
    `Mean${record.groups.some(isHealing) ? " of the healed" : ""} with its 95 % interval, clustered by patient (CR2, Satterthwaite)`,
    record.groups.some(isHealing) ? "Median and quartiles with the unhealed in" : null,
    filmText(record),
    unit === "months/cm" ? `1 month is ${daysPerMonth} days` : null,
    `Data to ${record.dataTo ?? "no quarter"}, batch ${record.batch}`,
    `Result reference ${record.stamp}`,
  ];
  return `${sentences.filter((sentence) => sentence !== null && sentence !== "").join(". ")}.`;
}

/** Days read from films are late by about half the interval between films. */
function filmText({ groups }: HealingRecordForFigure): string | null {
  const known = groups.filter((group) => group.medianFilmIntervalDays !== null);
  if (known.length === 0) return null;
  const [only] = known;
  const text = (days: number | null) => decimals(days ?? 0, 0);
  const values =
    known.length === 1 && groups.length === 1
      ? `${text(only?.medianFilmIntervalDays ?? null)} days`
      : known.map((group) => `${group.label} ${text(group.medianFilmIntervalDays)} days`).join(", ");
  return `Median interval between the films around consolidation: ${values}`;
}
