/** log Γ(x), of stdlib. */
export { default as logGamma } from "@stdlib/math-base-special-gammaln";
