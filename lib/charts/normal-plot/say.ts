import type { Head } from "../head/lay-head";
import { countsText, totalText } from "../say/excluded";
import { decimals, grouped } from "../say/numbers";
import type { NormalPlotGroup, NormalPlotRecord } from "./record";

/** What the counted have: without a model nothing is in a fit. */
export function doneOf(groups: readonly NormalPlotGroup[]): string {
  return groups.some(({ scale }) => scale !== null) ? "in the fit" : "with days and gain";
}

export function headOf(group: NormalPlotGroup): Head {
  return {
    name: group.label,
    estimate: group.scale === null ? "" : `σ of log days ${decimals(group.scale, 2)}`,
    lines: group.scale === null && group.n > 0 ? ["too few patients or bones, or gains too alike, for the model"] : [],
    counts: [`${countsText(group, "segment", doneOf([group]))}; ${grouped(group.healed)} healed${group.scale === null ? "" : ", drawn"}`],
  };
}

/** What a reader hears of one bone: `residual 0.42, in its place 0.38`. */
export function pointText({ residual, normal }: NormalPlotGroup["points"][number], name: string | null): string {
  const words = `residual ${decimals(residual, 2)}, normal quantile ${decimals(normal, 2)}`;
  return name === null ? words : `${name}: ${words}`;
}

export function describe({ groups }: NormalPlotRecord): string {
  const said = groups.map((group) => {
    const { estimate = "", lines = [], counts = [] } = headOf(group);
    return `${group.label}: ${[estimate, ...lines, ...counts].filter((text) => text !== "").join("; ")}.`;
  });
  return [
    "Each healed bone is a mark: the normal quantile in its place across, its residual upwards. Marks on the line fit the model.",
    `${totalText(groups, "segment", doneOf(groups))}.`,
    ...said,
  ].join(" ");
}
