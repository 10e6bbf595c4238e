import { caseMixFields, isKnownLater, type MeasureEntry } from "@/lib/answers";
import { conditionField } from "@/lib/cohorts";
import type { Choice } from "../_client/sentence";
import { fieldChoice, techniqueSplits } from "../_place/split-word";

/** Outcomes of a family as the page offers them; an address may name any measure. */
export const outcomesOffered = [
  "surgery-to-consolidation",
  "maturation",
  "distraction-rate",
  "gain-error",
  "gain-within-10mm",
  "gain-goal-reached",
  "complication-patients-with-any",
  "complication-segments-with-any",
  "complication-events-per-10cm",
  "complication-worst",
  "complication-return-to-theatre",
  "operations-per-segment",
  "motion-knee-flexion.lost",
  "motion-ankle-dorsiflexion.lost",
  "alignment-axis-per-cm",
] as const;
export const usualOutcomes: readonly string[] = ["surgery-to-consolidation", "gain-within-10mm", "complication-patients-with-any"];
export const mostOutcomes = 10;

/** What the trade compares, techniques first; a field known only later is named last, and says so. */
export function fieldChoices(): readonly Choice[] {
  const whole = techniqueSplits.filter((text) => !text.includes(":"));
  const who = ["bone", "sex", "indication", "aetiology", "smoking", "growthPlates", "surgeryYear", "auditYear", "side"];
  const rest = [
    "nailMaterial",
    "nailUse",
    "fibula",
    "jointGuarded",
    "osteotomyCooled",
    "releaseRectus",
    "releaseHamstrings",
    "boneGraftAtOperation",
  ];
  return [...whole, ...who, ...rest].filter((field) => conditionField(field) !== undefined).map(fieldChoice);
}

/** Covariates that were there before the comparison began. */
export const covariatesOffered: readonly string[] = caseMixFields.filter((field) => !isKnownLater(field));

export function measureTitle(id: string, measures: readonly MeasureEntry[]): string {
  const listed = measures.find((entry) => entry.id === id) ?? measures.find((entry) => id.startsWith(`${entry.id}.`));
  return listed?.title ?? id;
}

export function isMeasure(id: string, measures: readonly MeasureEntry[]): boolean {
  return measures.some((entry) => entry.id === id || id.startsWith(`${entry.id}.`));
}
