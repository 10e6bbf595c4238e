import { eachTerm, fitLogNormal, logSpans } from "./log-normal-fit";
import { type SpanRows, spansOf } from "./require-spans";
import { type DesignInput, standardisedDesign } from "./standardised-design";

/**
 * How far each row lies beyond what a log-normal time model expects of it, in the derivative of its log-likelihood: the residual in standard
 * deviations when it is exact, the expected one when it is censored. Without the groups in the design they are what a permutation exchanges.
 * @throws RangeError, TypeError as `timeModel`
 */
export function logNormalScores(caller: string, { design, names, ...rows }: SpanRows & DesignInput): Float64Array {
  const spans = spansOf(caller, rows);
  const columns = standardisedDesign(caller, { design, names }, spans.after.length);
  const logs = logSpans(caller, spans);
  const scores = new Float64Array(spans.after.length);
  eachTerm(logs, columns, fitLogNormal(caller, logs, columns).parameters, (row, term) => {
    scores[row] = term[1] as number;
  });
  return scores;
}
