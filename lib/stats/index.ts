/** The door of the statistics room. Each helper file keeps to one method; here they stand under headings. */

// Ground
export * from "./distributions";
export { type Note, type NoteCode, noteText } from "./notes";
// Quantiles
export { quantile } from "./quantile";
export type { Estimate, PatientLabels, TestResult } from "./record";
export { type Random, seededRandom } from "./resample/random";
export { quantileSorted, sortedCopy } from "./summary/order";
export { meanOf, sampleDeviation } from "./summary/spread";

// Shares and counts

// Means and regression

// Permutation and bootstrap

// Ranks, tables, agreement, growth

// Time
