/** Distributions: always from the small tail; special functions are those of stdlib. */

export { betaCdf, betaQuantile, betaUpper, betaUpperQuantile } from "./beta";
export { binomialAtLeast, binomialCdf, poissonAtLeast, poissonCdf } from "./counts";
export { fUpper } from "./f";
export { chiSquareQuantile, chiSquareUpper, gammaCdf, gammaQuantile, gammaUpper } from "./gamma";
export { hypergeometric, hypergeometricAtLeast, hypergeometricCdf } from "./hypergeometric";
export { logGamma } from "./log-gamma";
export { noncentralTUpper } from "./noncentral-t";
export { normalCdf, normalDensity, normalQuantile, normalTwoSided, normalUpper } from "./normal";
export { tCdf, tQuantile, tTwoSided, tUpper } from "./student-t";
