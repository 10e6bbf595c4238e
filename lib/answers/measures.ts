import { definitionSentence, indexDefinitions } from "@/lib/outcomes";

/** A row of `measure --list`. */
export type MeasureEntry = {
  readonly id: string;
  readonly title: string;
  readonly of: "segment" | "person";
  readonly unit: string;
  readonly definition: string;
};

/** Every measure that can be asked for, in the order in which they are offered. */
export function measureList(): readonly MeasureEntry[] {
  return indexDefinitions.map((definition) => ({
    id: definition.id,
    title: definition.title,
    of: "segment",
    unit: definition.unit,
    definition: definitionSentence(definition),
  }));
}
