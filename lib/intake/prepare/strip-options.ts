export type StripOptions = {
  readonly auditYearStartsIn: number;
  /** The unit keeps the year of surgery only, no quarter. */
  readonly yearOnly: boolean;
  /** Today as days since 1970: a time since surgery may not reach beyond it. */
  readonly todayNumber: number;
};
