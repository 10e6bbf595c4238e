import { complicationMeasures, complicationSentence, definitionSentence, indexDefinitions } from "@/lib/outcomes";
import { bareMeasures } from "./measures/catalogue";

/** A row of `measure --list`. */
export type MeasureEntry = {
  readonly id: string;
  readonly title: string;
  readonly of: "segment" | "person";
  readonly unit: string;
  readonly definition: string;
};

/** Every measure that can be asked for, by its bare id, in the order in which they are offered. */
export function measureList(): readonly MeasureEntry[] {
  const clocks = indexDefinitions.map((one) => ({ ...entry(one), of: "segment" as const, definition: definitionSentence(one) }));
  const read = bareMeasures().map(([id, one]) => ({ ...entry(one), id, of: one.of, definition: one.sentence }));
  const events = complicationMeasures.map((one) => ({ ...entry(one), of: one.of, definition: complicationSentence(one) }));
  return [...clocks, ...read, ...events];
}

function entry({ id, title, unit }: { readonly id: string; readonly title: string; readonly unit: string }) {
  return { id, title, unit };
}
