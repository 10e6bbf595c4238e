// biome-ignore-all assist/source/organizeImports: the door stands under headings, not in alphabetical order
/** The door of the statistics room. One method a file; here they stand under headings. */

// Ground
export * from "./distributions";
export { type Note, type NoteCode, noteCodes, noteText } from "./notes";
export type { Estimate, PatientLabels, TestResult } from "./record";
export { type Random, seededRandom } from "./resample/random";
export { quantileSorted, sortedCopy } from "./summary/order";
export { countPatients } from "./cluster/patients";
export { meanOf, sampleDeviation } from "./summary/spread";
export { thresholds } from "./thresholds";

// Quantiles
export { medianInterval } from "./median-interval";
export { quantile } from "./quantile";
export { woodruffInterval } from "./woodruff-interval";

// Shares and counts
export { clopperPearson } from "./clopper-pearson";
export { eventRate } from "./event-rate";
export { exactRateRatio } from "./exact-rate-ratio";
export { garwood } from "./garwood";
export { newcombeDifference } from "./newcombe-difference";
export { percentFits } from "./percent-fits";
export { rateRatio } from "./rate-ratio";
export { riskDifference } from "./risk-difference";
export { riskRatio } from "./risk-ratio";
export { wilson } from "./wilson";
export { wilsonClustered } from "./wilson-clustered";

// Means and regression
export { cr2Difference } from "./cr2-difference";
export { cr2Mean } from "./cr2-mean";
export { type Coefficient, cr2Regression, type RegressionRecord } from "./cr2-regression";
export { htzWald } from "./htz-wald";
export { meansByPatient, patientMean } from "./patient-mean";
export { plainMean } from "./plain-mean";
export { pairedT } from "./paired-t";
export { ratioOfSums } from "./ratio-of-sums";
export { smallestDetectableDifference } from "./smallest-detectable-difference";
export { type StandardisedInput, standardisedDifference } from "./standardised-difference";
export { welch } from "./welch";

// Permutation and bootstrap
export { patientBootstrap } from "./patient-bootstrap";
export { permutationDifference } from "./permutation-difference";
export { bootstrapReplicates, percentileInterval, type Replicates } from "./resample/bootstrap";
export { signFlip } from "./sign-flip";

// Asked by name with JSON
export { type ListedMethod, listMethods, runMethod } from "./catalogue";

// Ranks, tables, agreement, growth
export { type BlandAltman, blandAltman } from "./bland-altman";
export { chiSquare } from "./chi-square";
export { cochranArmitage } from "./cochran-armitage";
export { type FirthCoefficient, firthLogistic } from "./firth-logistic";
export { type FisherExact, fisherExact } from "./fisher-exact";
export type { LmsRow } from "./growth/lms-row";
export { holm } from "./holm";
export { icc } from "./icc";
export { kruskalWallis } from "./kruskal-wallis";
export { lms } from "./lms";
export { lmsInverse } from "./lms-inverse";
export { mannWhitney } from "./mann-whitney";
export { signedRank } from "./signed-rank";
export { type WeightedKappa, weightedKappa } from "./weighted-kappa";
export type { KappaWeights } from "./agreement/kappa-of";

// Time
export { type KaplanMeier, type KaplanMeierInput, kaplanMeier, type MeanToTau, type SurvivalCurve } from "./kaplan-meier";
export { type MedianBounds, medianBounds } from "./median-bounds";
export { type TimeCoefficient, type TimeModel, type TimeModelInput, timeModel } from "./time-model";
export { type LogRank, logRank } from "./log-rank";
export { type AalenJohansen, type AalenJohansenInput, aalenJohansen, type CauseCurve } from "./aalen-johansen";
export { type GrayTest, type GrayTestInput, grayTest } from "./gray-test";
export { reverseKaplanMeier } from "./reverse-kaplan-meier";
export { type RestrictedMeanDifference, type RestrictedMeanDifferenceInput, restrictedMeanDifference } from "./restricted-mean-difference";
export { type Cox, type CoxInput, cox, type HazardCoefficient } from "./cox";
export { type Turnbull, turnbull } from "./turnbull";
export { type NormalPoint, normalPlot } from "./survival/normal-plot";
export type { SpanRows } from "./survival/require-spans";
export type { LimitScale } from "./survival/curve-limits";
export type { TimeRows } from "./survival/require-rows";

// Which estimate a situation gets
export {
  type Answer,
  type AnswerTo,
  type Asked,
  type Covariate,
  daysAtMedianGain,
  estimate,
  type Situation,
  type SituationName,
  type TestAnswer,
} from "./estimate";
