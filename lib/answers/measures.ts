import { complicationMeasures, complicationSentence, definitionSentence, type IndexDefinition, indexDefinitions } from "@/lib/outcomes";
import { bareMeasures, readMeasure } from "./measures/catalogue";

/** A row of `measure --list`. */
export type MeasureEntry = {
  readonly id: string;
  readonly title: string;
  readonly of: "segment" | "person";
  readonly unit: string;
  readonly definition: string;
};

/** The clocks alone: what the healing question can be asked of; of every unit, or those given. */
export function clockList(clocks: readonly IndexDefinition[] = indexDefinitions): readonly MeasureEntry[] {
  return clocks.map((one) => ({ ...entry(one), of: "segment", definition: definitionSentence(one) }));
}

/** The measures of a unit's own scores, each by itself, as they are compared. */
export function scoreMeasures(codes: readonly string[]): readonly MeasureEntry[] {
  return codes
    .flatMap((code) => [`score-change.${code}`, `score-responders.${code}`])
    .flatMap((id) => {
      const one = readMeasure(id);
      return one ? [{ ...entry(one), of: one.of, definition: one.sentence }] : [];
    });
}

/** Every measure that can be asked for, by its bare id, in the order in which they are offered: with no clocks given, those of every unit. */
export function measureList(clocks?: readonly IndexDefinition[]): readonly MeasureEntry[] {
  const read = bareMeasures().map(([id, one]) => ({ ...entry(one), id, of: one.of, definition: one.sentence }));
  const events = complicationMeasures.map((one) => ({ ...entry(one), of: one.of, definition: complicationSentence(one) }));
  return [...clockList(clocks), ...read, ...events];
}

function entry({ id, title, unit }: { readonly id: string; readonly title: string; readonly unit: string }) {
  return { id, title, unit };
}
