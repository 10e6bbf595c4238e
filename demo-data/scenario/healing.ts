import type { Chance } from "./chance";
import { fixedShare, type HealingGroup, healing, residualShare, sharedByPerson, slower } from "./parameters";
import type { PersonDraft } from "./types";

export type Healing = {
  readonly group: HealingGroup;
  readonly gainMm: number;
  readonly age: number;
  readonly oblique: boolean;
  readonly person: PersonDraft;
  /** What all segments of the person share, standardised. */
  readonly personEffect: number;
};

/**
 * Days from surgery until the bone would be seen healed, were a film taken every day:
 * (fixed part + days per cm × gain) × factors + scatter, half of it the person's own.
 */
export function trueDaysToConsolidation(chance: Chance, { group, gainMm, age, oblique, person, personEffect }: Healing): number {
  const { meanDaysPerCm, sdDaysPerCm, typicalGainCm } = healing[group];
  const atTypicalGain = meanDaysPerCm * typicalGainCm;
  const days = fixedShare * atTypicalGain + ((1 - fixedShare) * meanDaysPerCm * gainMm) / 10;
  const factor =
    (person.smoking === "now" ? slower.smokingNow : 1) *
    (person.vitaminDDeficiency ? slower.vitaminDDeficiency : 1) *
    (oblique ? slower.obliqueOsteotomy : 1) *
    (age < 15 ? slower.below15Years : slower.perYearAbove30 ** Math.max(0, age - 30));
  const scatter = Math.sqrt(sharedByPerson) * personEffect + Math.sqrt(1 - sharedByPerson) * chance.skewed();
  return Math.max(0, days * factor + residualShare * sdDaysPerCm * typicalGainCm * scatter);
}
