import type { PatientIndex } from "../cluster/patients";

/**
 * Degrees of freedom of the estimate of between + within: twice its square over its variance by the expected information of REML,
 * ½ tr(P Vᵢ P Vⱼ), written out in the sizes m of the patients. With one value a patient it is n − 1, since only the sum is known there.
 * Searle SR, Casella G, McCulloch CE. Variance Components 1992, section 6.6 (information); Satterthwaite FE. Biometrics Bull 1946;2:110-114.
 */
export function totalVarianceDf({ between, within }: { between: number; within: number }, { rows }: PatientIndex): number {
  const total = between + within;
  // patients who repeat themselves exactly tell no more than their means do
  if (within === 0) return rows.length - 1;
  const [share, inside] = [between / total, within / total];
  const sum = (term: (m: number, weight: number) => number) => rows.reduce((all, m) => all + term(m, 1 / (inside + m * share)), 0);
  const weights = sum((m, w) => m * w);
  const [one, two] = [sum((m, w) => m * w * w) / weights, sum((m, w) => (m * w) ** 2) / weights];
  const information = {
    within: sum((m, w) => w * w + (m - 1) / inside ** 2) - (2 * sum((m, w) => m * w ** 3)) / weights + one * one,
    both: sum((m, w) => m * w * w) - (2 * sum((m, w) => m ** 2 * w ** 3)) / weights + one * two,
    between: sum((m, w) => (m * w) ** 2) - (2 * sum((m, w) => (m * w) ** 3)) / weights + two * two,
  };
  if (rows.every((m) => m === 1)) return information.within;
  const { within: a, both: b, between: c } = information;
  return (a * c - b * b) / (a + c - 2 * b);
}
