/** A share with its own limits. */
export interface ShareWithLimits {
  readonly estimate: number;
  readonly lower: number;
  readonly upper: number;
}

/**
 * Limits of p₁ − p₂ from the limits of the two shares by squaring and adding.
 * Newcombe RG. Stat Med 1998;17:873-890, method 10.
 */
export function newcombeLimits(first: ShareWithLimits, second: ShareWithLimits): { lower: number; upper: number } {
  const difference = first.estimate - second.estimate;
  return {
    lower: difference - Math.hypot(first.estimate - first.lower, second.upper - second.estimate),
    upper: difference + Math.hypot(first.upper - first.estimate, second.estimate - second.lower),
  };
}
