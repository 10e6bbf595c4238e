/**
 * Degrees of freedom that rounding left a hair beside a whole number are that number: five patients with one value each have 4,
 * and 3.999999999999999 would fall below a threshold of 4.
 */
export function wholeDf(df: number): number {
  const whole = Math.round(df);
  return Math.abs(df - whole) < 1e-9 * whole ? whole : df;
}
