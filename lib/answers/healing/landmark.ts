import { conditionField } from "@/lib/cohorts";
import { endsAtConsolidation, type IndexDefinition } from "@/lib/outcomes";
import type { Note } from "../types";
import { said } from "./said";

/**
 * The clock from a landmark day on, days from surgery; as it is when none is set.
 * @throws RangeError for a clock that doesn't end at consolidation, or a day that is no whole number from 1 to 3650
 */
export function atLandmark(definition: IndexDefinition, landmark: number | undefined): IndexDefinition {
  if (landmark === undefined) return definition;
  if (!endsAtConsolidation(definition)) throw new RangeError("a landmark requires a clock that ends at consolidation, received another");
  if (!Number.isInteger(landmark) || landmark < 1 || landmark > 3650)
    throw new RangeError(`a landmark requires a whole number of days from 1 to 3650, received ${landmark}`);
  return { ...definition, landmarkDay: landmark };
}

/** The landmark as it stands in a question; nothing when none is set, so that older references stay what they were. */
export function landmarkOption({ landmarkDay }: IndexDefinition): { readonly landmark?: number } {
  return landmarkDay === undefined ? {} : { landmark: landmarkDay };
}

type Start = Pick<IndexDefinition, "from" | "landmarkDay">;

/** Whether a field is known only after a clock's start: at a landmark, and from the end of distraction on, what that end tells is known. */
export function isKnownAfter(field: string, { from, landmarkDay }: Start): boolean {
  const known = conditionField(field)?.known;
  if (known === "before" || known === "operation") return false;
  return !(known === "distraction-end" && (landmarkDay !== undefined || from === "distraction-end"));
}

/** The caution of a split by what was known only later. */
export function splitNotes(fields: readonly string[], clock: Start): readonly Note[] {
  return fields
    .filter((field) => isKnownAfter(field, clock))
    .map((field) => said({ code: "split-known-later", field: conditionField(field)?.label ?? field }));
}
