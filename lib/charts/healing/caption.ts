import { captionFrom } from "../figure/caption";
import type { CaptionOptions } from "../figure/figure";
import { decimals } from "../say/numbers";
import { type HealingRecordForFigure, isHealing } from "./record";
import { totalText } from "./say";

/** The caption that goes with the figure wherever it goes: cohort, n, definition, interval, film interval, data, batch and reference. */
export function captionOf(record: HealingRecordForFigure, options: CaptionOptions = {}): string {
  const summed = record.groups.some(({ mean }) => mean.lower !== null);
  const healing = record.groups.some(isHealing);
  const reading = [
    summed ? `Mean${healing ? " of the healed" : ""} with its 95 % interval, clustered by patient (CR2, Satterthwaite)` : null,
    summed && healing ? "Median and quartiles with the unhealed in" : null,
    filmText(record),
  ];
  return captionFrom(record, { counts: totalText(record.groups), reading, groups: record.groups }, options);
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
