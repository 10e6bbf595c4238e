import { readFileSync } from "node:fs";
import { percentFits } from "@/lib/stats";

/** A percentage that a publication prints beside counts; `counts` says whether both counts were printed, or the numerator was inferred from it. */
export type PrintedPercent = {
  readonly id: string;
  readonly what: string;
  readonly x: number;
  readonly n: number;
  readonly printed: number;
  readonly digits: number;
  readonly counts: "printed" | "inferred";
  readonly source: string;
  readonly read: string;
};

export const printedPercents = JSON.parse(
  readFileSync(new URL("./printed-percents.json", import.meta.url), "utf8"),
) as readonly PrintedPercent[];

export function printedPercent(id: string): PrintedPercent {
  const found = printedPercents.find((one) => one.id === id);
  if (!found) throw new RangeError(`printedPercent requires an id of printed-percents.json, received ${id}`);
  return found;
}

/** Those that aren't their own counts'. */
export function misprinted() {
  return printedPercents.flatMap((one) => {
    const found = percentFits(one);
    return found.fits ? [] : [{ ...one, found }];
  });
}
