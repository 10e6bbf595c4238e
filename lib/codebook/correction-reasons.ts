/** Why a field was corrected by hand: codes only, so that no name can stand in a reason. */
export const correctionReasons = [
  "typing-error",
  "source-checked",
  "measured-again",
  "wrong-unit",
  "wrong-patient",
  "clearing",
  "other",
] as const;
export type CorrectionReason = (typeof correctionReasons)[number];
