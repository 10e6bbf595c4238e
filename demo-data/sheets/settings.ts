import { scores } from "../scenario/scores";

/** The demo unit's own lists, in the form that the command line takes. */
export const settings = {
  units: ["unit-1"],
  scores,
  difficultyScore: null,
  auditYearStartsIn: 1,
  toleranceMm: 5,
  yearOnly: false,
} as const;
