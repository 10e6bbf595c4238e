import { normalTwoSided, normalUpper } from "../distributions";

/** p values of a sum of ranks `from` its middle, normal with a continuity correction of one half. */
export function normalTails(from: number, deviation: number): { p: number; pLess: number; pGreater: number } {
  return {
    p: normalTwoSided(Math.max(0, Math.abs(from) - 0.5) / deviation),
    pLess: normalUpper((-from - 0.5) / deviation),
    pGreater: normalUpper((from - 0.5) / deviation),
  };
}
