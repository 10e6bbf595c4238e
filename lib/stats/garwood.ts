import { exactCountLimits } from "./rates/exact-count";
import { requireConfidence, requireCount, requirePositive } from "./require";

/**
 * Events over exposure with Garwood's exact interval, every event counted as independent of the others.
 * Garwood F. Biometrika 1936;28:437-442.
 * @param per the rate is given per so much exposure (10 for "per 10 cm")
 * @throws RangeError when events isn't a whole number of at least zero, or exposure or per isn't above zero
 * @example garwood({ events: 0, exposure: 1 }).upper.toFixed(4) // => "3.6889"
 */
export function garwood({
  events,
  exposure = 1,
  per = 1,
  confidence = 0.95,
}: {
  events: number;
  exposure?: number;
  per?: number;
  confidence?: number;
}) {
  requireCount("garwood", "events", events);
  requirePositive("garwood", "exposure", exposure);
  requirePositive("garwood", "per", per);
  requireConfidence("garwood", confidence);
  const unit = per / exposure;
  const { lower, upper } = exactCountLimits(events, confidence);
  return {
    estimate: events * unit,
    se: null,
    df: null,
    lower: lower * unit,
    upper: upper * unit,
    events,
    exposure,
    n: events,
    patients: null,
    method: "Garwood exact Poisson interval",
    notes: [],
  } as const;
}
