export type Link = "identity" | "log" | "logit";

/** How the mean follows from the linear part, its slope there, and the working variance at a mean. */
export interface LinkFunctions {
  readonly mean: (eta: number) => number;
  readonly slope: (eta: number) => number;
  readonly variance: (mean: number) => number;
  /** A linear part to start from. */
  readonly start: (y: number) => number;
  /** What a value must be, for the message. */
  readonly allows: (y: number) => boolean;
  readonly allowed: string;
}

const logistic = (eta: number) => (eta < 0 ? Math.exp(eta) / (1 + Math.exp(eta)) : 1 / (1 + Math.exp(-eta)));

export const links: Readonly<Record<Link, LinkFunctions>> = {
  identity: {
    mean: (eta) => eta,
    slope: () => 1,
    variance: () => 1,
    start: (y) => y,
    allows: () => true,
    allowed: "any number",
  },
  // Variance as the mean (Poisson): right for counts; for 0 and 1 the modified Poisson of Zou, Am J Epidemiol 2004;159:702-706.
  log: {
    mean: Math.exp,
    slope: Math.exp,
    variance: (mean) => mean,
    start: (y) => Math.log(y + 0.1),
    allows: (y) => y >= 0,
    allowed: "values of at least zero",
  },
  logit: {
    mean: logistic,
    slope: (eta) => logistic(eta) * logistic(-eta),
    variance: (mean) => mean * (1 - mean),
    start: (y) => Math.log((y + 0.5) / (1.5 - y)),
    allows: (y) => y >= 0 && y <= 1,
    allowed: "values from 0 to 1",
  },
};
