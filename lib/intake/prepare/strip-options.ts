export type StripOptions = {
  readonly auditYearStartsIn: number;
  /** The unit keeps the year of surgery only, no quarter. */
  readonly yearOnly: boolean;
};
