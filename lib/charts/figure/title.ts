import { listed } from "../say/numbers";
import type { FigureSource } from "./source";

/** Accessible name of a figure: what is measured, and by what it is split. `what` where the figure shows another side of the measure. */
export function titleOf({ definition, by = [] }: FigureSource, what = definition.title): string {
  return by.length === 0 ? what : `${what} by ${listed(by.map(words))}`;
}

/** A field id as words, where nobody gives a label: `osteotomySite` → `osteotomy site`. */
function words(field: string): string {
  return field.replace(/([a-z0-9])([A-Z])/g, "$1 $2").toLowerCase();
}
