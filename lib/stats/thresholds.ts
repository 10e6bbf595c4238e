/**
 * Every number of this room that is judgement and not mathematics, in one place, so that the methods page can print them.
 * None has a published source; they are common practice for samples of a single unit.
 */
export const thresholds = {
  /** Below this many patients values are shown and nothing is estimated. */
  patientsForInterval: 3,
  /** Below this many degrees of freedom the mean of patients is shown first. */
  dfForSegmentMean: 4,
  /** Below this many patients with segments in both groups the within-patient difference isn't used. */
  patientsInBothGroups: 5,
  /** Below this many patients a rate's events are said to lie in few patients. */
  patientsWithEvents: 5,
  /** Below this many patients a ratio of sums has no interval. */
  patientsForRatio: 6,
  /** Below this many patients a curve has no band. */
  patientsForCurve: 10,
  /** Below this many patients nothing is bootstrapped. */
  patientsForBootstrap: 20,
  /** From this many patients on the interval of a median is Woodruff's: resampling them would say the same and take long. */
  patientsForWoodruff: 500,
  /** Above this share of resamples without a value a bootstrap has no interval. */
  failedResamples: 0.05,
  /** Up to this many arrangements a permutation test takes all of them. */
  arrangementsTaken: 20_000,
  /** Arrangements drawn when there are more. */
  arrangementsDrawn: 9_999,
  /** Two means of the same segments further apart than this share of a standard error are said to differ. */
  standardErrorsApart: 0.5,
  /** Above this share of rows not healed at the last film, estimates on the index scale are description only. */
  shareCensored: 0.1,
  /** From this share healed on, healing is compared on the logarithm of days, the few unhealed left out and counted. */
  shareHealed: 0.9,
  /** A curve is shown while at least this many rows are at risk. */
  atRiskShown: 5,
  /** Two groups whose gains differ by more than this in their own spread bear the note on the shared denominator. */
  gainsApart: 0.2,
  /** An adjusted estimate spends at most one df for each so many patients (with the rarer outcome, when it is a share). */
  patientsPerParameter: 10,
} as const;
