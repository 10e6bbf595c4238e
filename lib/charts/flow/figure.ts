import { captionFrom } from "../figure/caption";
import type { CaptionOptions, Figure } from "../figure/figure";
import { counted, countedIn } from "../say/numbers";
import { count, tableFrom, words } from "../table/columns";
import type { DataTable } from "../table/data-table";
import { flowTitle, layoutFlow } from "./layout-flow";
import { type FlowRecord, type Walked, walked } from "./record";

/** Flow of exclusions from registry to analysed. */
export const flowFigure: Figure<FlowRecord> = {
  id: "exclusion-flow",
  layout: layoutFlow,
  caption: captionOfFlow,
  table: tableOfFlow,
  units: () => [""],
};

function captionOfFlow(record: FlowRecord, options: CaptionOptions = {}): string {
  const steps = walked(record);
  const [first, last] = [steps[0], steps.findLast(({ kind }) => kind === "stays")];
  const out = steps.filter(({ kind }) => kind === "leaves").reduce((sum, { segments }) => sum + segments, 0);
  const counts =
    first && last
      ? `${countedIn(first.segments, first.patients)} ${first.words}, ${counted(out, "segment")} left out, ${countedIn(last.segments, last.patients)} ${last.words}`
      : "No segment";
  const reading = ["Each reason is applied to what the ones before it left; a patient may leave with one segment and stay with another"];
  return captionFrom(record, { what: flowTitle, counts, reading }, options);
}

function tableOfFlow(record: FlowRecord): DataTable {
  return tableFrom<Walked>(
    [
      words("step", "Step", (step) => step.words),
      words("kind", "Stays or left out", ({ kind }) => (kind === "stays" ? "stays" : "left out")),
      count("segments", "Segments", ({ segments }) => segments),
      count("patients", "Patients", ({ patients }) => patients),
      count("left", "Segments left", ({ left }) => left),
    ],
    walked(record),
  );
}
