import { listed } from "../say/numbers";
import type { FigureSource } from "./source";

/** Accessible name of a figure: what is measured, and by what it is split. `what` where the figure shows another side of the measure. */
export function titleOf({ definition, by = [] }: FigureSource, what = definition.title): string {
  return by.length === 0 ? what : `${what} by ${listed(by.map(splitWords))}`;
}

/** A split as words, where nobody gives a label: `osteotomySite` → `osteotomy site`, `gainMm:30/50` → `gain in bands (cut at 30 and 50)`. */
export function splitWords(split: string): string {
  const [field = "", cuts] = split.split(":");
  const words = (id: string) => id.replace(/([a-z0-9])([A-Z])/g, "$1 $2").toLowerCase();
  if (cuts === undefined) return words(field);
  return `${words(field.replace(/(Mm|Cm|Deg|Years|Days)$/, "")).replaceAll("-", " ")} in bands (cut at ${listed(cuts.split("/"))})`;
}
