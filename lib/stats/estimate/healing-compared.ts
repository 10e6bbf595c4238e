import { countPatients } from "../cluster/patients";
import type { Note } from "../notes";
import { thresholds } from "../thresholds";
import { type Answer, notesOnce, tooFew } from "./answer";
import { leftOutNote, refusals } from "./covariates";
import { type EqualGain, equalGain, equalGainTest } from "./healing-at-equal-gain";
import { type CensoredHealing, censoredHealing, censoredHealingTest } from "./healing-censored";
import { type HealingComparedSituation, type HealingRows, healingRows } from "./healing-rows";

export type HealingComparedAnswer = Answer<{ readonly equalGain: EqualGain | null; readonly timeModel: CensoredHealing | null }>;

/**
 * Days of two groups at equal gain. From 90 % healed on the logarithm of days of the healed; below, the log-normal time model with the
 * unhealed in. With covariates it is an adjusted estimate, refused when one is known too late or they are too many.
 */
export function estimateHealingCompared(asked: HealingComparedSituation): HealingComparedAnswer {
  const { confidence = 0.95, test = false, seed, covariates = [] } = asked;
  const rows = healingRows(asked);
  const refused = refusals(covariates, rows.names.length, countPatients(rows.patient));
  const left = leftOutNote(rows.leftOut);
  if (refused.length > 0) return { ...nothing, notes: notesOnce(refused, left) };
  const fewest = Math.min(...rows.pair.map((label) => countPatients(rows.patient.filter((_, row) => rows.group[row] === label))));
  if (fewest < thresholds.patientsForInterval)
    return { ...nothing, notes: notesOnce([tooFew(fewest, thresholds.patientsForInterval)], left) };
  return mostlyHealed(rows) ? healedAnswer(rows, confidence, test, seed, left) : censoredAnswer(rows, confidence, test, seed, left);
}

const nothing = { lead: "values", records: { equalGain: null, timeModel: null }, test: null } as const;

function mostlyHealed({ healed }: HealingRows): boolean {
  return healed.filter((one) => one === 1).length >= thresholds.shareHealed * healed.length;
}

function healedAnswer(rows: HealingRows, confidence: number, test: boolean, seed: number, left: readonly Note[]): HealingComparedAnswer {
  const found = equalGain(rows, confidence);
  return {
    lead: "equalGain",
    records: { equalGain: found, timeModel: null },
    test: test ? equalGainTest(found, rows, seed) : null,
    notes: notesOnce(found.notes, left),
  };
}

function censoredAnswer(rows: HealingRows, confidence: number, test: boolean, seed: number, left: readonly Note[]): HealingComparedAnswer {
  const found = censoredHealing(rows, confidence, seed);
  return {
    lead: "timeModel",
    records: { equalGain: null, timeModel: found },
    test: test && found.model ? censoredHealingTest(rows, seed) : null,
    notes: notesOnce(found.notes, left),
  };
}
