import { type AdjustedAnswer, type AdjustedSituation, estimateAdjusted } from "./adjusted";
import { type CompetingAnswer, type CompetingSituation, estimateCompeting } from "./competing";
import { type CurveAnswer, type CurveSituation, estimateCurve } from "./curve";
import { estimateGainError, type GainErrorAnswer, type GainErrorSituation } from "./gain-error";
import { estimateHealingCompared, type HealingComparedAnswer } from "./healing-compared";
import type { HealingComparedSituation } from "./healing-rows";
import { estimateMean, type MeanAnswer, type MeanSituation } from "./mean";
import { estimateMedian, type MedianAnswer, type MedianSituation } from "./median";
import { estimateMedianIndex, type MedianIndexAnswer, type MedianIndexSituation } from "./median-index";
import {
  type AgreementAnswer,
  type AgreementSituation,
  estimateAgreement,
  estimateOrderedClass,
  type OrderedClassAnswer,
  type OrderedClassSituation,
} from "./ordered";
import { estimateRate, estimateTwoRates, type RateAnswer, type RateSituation, type TwoRatesAnswer, type TwoRatesSituation } from "./rates";
import { estimateRatio, type RatioAnswer, type RatioSituation } from "./ratio";
import { estimateSeveralMeans, type SeveralMeansAnswer, type SeveralMeansSituation } from "./several-means";
import {
  estimatePatientShare,
  estimateSegmentShare,
  estimateTwoShares,
  type PatientShareAnswer,
  type PatientShareSituation,
  type SegmentShareAnswer,
  type SegmentShareSituation,
  type TwoSharesAnswer,
  type TwoSharesSituation,
} from "./shares";
import { estimateTwoMeans, type TwoMeansAnswer, type TwoMeansSituation } from "./two-means";

/** Each situation with the answer that it gets. */
interface Rows {
  mean: [MeanSituation, MeanAnswer];
  median: [MedianSituation, MedianAnswer];
  "ratio-of-sums": [RatioSituation, RatioAnswer];
  "two-means": [TwoMeansSituation, TwoMeansAnswer];
  "several-means": [SeveralMeansSituation, SeveralMeansAnswer];
  "healing-compared": [HealingComparedSituation, HealingComparedAnswer];
  "healing-curve": [CurveSituation, CurveAnswer];
  "median-index": [MedianIndexSituation, MedianIndexAnswer];
  competing: [CompetingSituation, CompetingAnswer];
  "share-of-patients": [PatientShareSituation, PatientShareAnswer];
  "share-of-segments": [SegmentShareSituation, SegmentShareAnswer];
  "two-shares": [TwoSharesSituation, TwoSharesAnswer];
  rate: [RateSituation, RateAnswer];
  "two-rates": [TwoRatesSituation, TwoRatesAnswer];
  "ordered-class": [OrderedClassSituation, OrderedClassAnswer];
  agreement: [AgreementSituation, AgreementAnswer];
  adjusted: [AdjustedSituation, AdjustedAnswer];
  "gain-error": [GainErrorSituation, GainErrorAnswer];
}

export type SituationName = keyof Rows;
export type Situation<S extends SituationName = SituationName> = { [K in S]: Rows[K][0] }[S];
export type AnswerTo<S extends SituationName> = Rows[S][1];

const rows: { readonly [S in SituationName]: (asked: Rows[S][0]) => Rows[S][1] } = {
  mean: estimateMean,
  median: estimateMedian,
  "ratio-of-sums": estimateRatio,
  "two-means": estimateTwoMeans,
  "several-means": estimateSeveralMeans,
  "healing-compared": estimateHealingCompared,
  "healing-curve": estimateCurve,
  "median-index": estimateMedianIndex,
  competing: estimateCompeting,
  "share-of-patients": estimatePatientShare,
  "share-of-segments": estimateSegmentShare,
  "two-shares": estimateTwoShares,
  rate: estimateRate,
  "two-rates": estimateTwoRates,
  "ordered-class": estimateOrderedClass,
  agreement: estimateAgreement,
  adjusted: estimateAdjusted,
  "gain-error": estimateGainError,
};

/**
 * Which estimate a situation gets, what stands beside it and what is said: the table of the methods page as code.
 * Thresholds are those of `thresholds`; notes are facts, worded by `noteText`. A p value is given only when `test` is asked for.
 * @throws RangeError for a situation that isn't one, and what the methods throw on rows that don't fit together
 * @example estimate({ situation: "share-of-patients", x: 0, n: 20 }).records.share.upper.toFixed(4) // => "0.1611"
 */
export function estimate<S extends SituationName>(asked: Situation<S> & { readonly situation: S }): AnswerTo<S> {
  const row = rows[asked.situation] as ((asked: Situation<S>) => AnswerTo<S>) | undefined;
  if (!row) throw new RangeError(`estimate requires a situation (${Object.keys(rows).join(", ")}), received another`);
  return row(asked);
}

export type { Answer, Asked, TestAnswer } from "./answer";
export type { Covariate } from "./covariates";
export { daysAtMedianGain } from "./median-index";
