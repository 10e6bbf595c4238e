import type { Choice } from "../_client/sentence";

export const timeUnits = ["days", "months"] as const;
export const timeUnitChoices: readonly Choice[] = timeUnits.map((unit) => ({ value: unit, text: unit }));

export const lengthUnits = ["mm", "cm"] as const;
export const lengthUnitChoices: readonly Choice[] = lengthUnits.map((unit) => ({ value: unit, text: unit }));
