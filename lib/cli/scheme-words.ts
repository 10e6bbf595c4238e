/** The complication schemes of `--scheme` (ids.md §8). */
export const schemeWords = [
  "problem-obstacle",
  "triple-contract",
  "triple-contract-without-time",
  "three-level",
  "severity",
  "surgical",
  "device-related",
] as const;

/** What ends the treatment of a nail, for `--end`. */
export const endRuleWords = ["healed-and-bearing", "implant-removal", "twelve-months"] as const;
