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
