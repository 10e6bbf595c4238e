import { climb, type LogisticData, type Place } from "./penalised";

const mostSteps = 100;

/**
 * Where the profile of one coefficient has fallen by `drop` from the top, on one side (`direction` −1 or 1): its limit.
 * Steps outward until it is below, then false position with bisection. Heinze G, Schemper M. Stat Med 2002;21:2409-2419.
 */
export function profileLimit(data: LogisticData, top: Place, column: number, se: number, direction: -1 | 1, drop: number): number {
  let place = top;
  const below = (value: number) => {
    const start = Float64Array.from(place.at);
    start[column] = value;
    place = climb(data, start, column);
    return place.logLikelihood - (top.logLikelihood - drop);
  };
  const estimate = top.at[column] as number;
  let inner = { value: estimate, above: drop };
  let outer = { value: estimate, above: drop };
  for (let reach = 1; outer.above > 0; reach *= 1.5) {
    inner = outer;
    const value = estimate + direction * reach * se;
    outer = { value, above: below(value) };
  }
  return crossing(below, inner, outer);
}

interface Side {
  value: number;
  above: number;
}

/** Illinois rule: false position, the side that stays has its weight halved. */
function crossing(below: (value: number) => number, inside: Side, outside: Side): number {
  let [inner, outer] = [inside, outside];
  for (let count = 0; count < mostSteps; count++) {
    const value = (inner.value * outer.above - outer.value * inner.above) / (outer.above - inner.above);
    if (Math.abs(outer.value - inner.value) < 1e-11 * Math.max(1, Math.abs(value))) return value;
    const above = below(value);
    if (Math.abs(above) < 1e-13) return value;
    if (above > 0) {
      inner = { value, above };
      outer = { value: outer.value, above: outer.above / 2 };
    } else {
      outer = { value, above };
      inner = { value: inner.value, above: inner.above / 2 };
    }
  }
  return (inner.value + outer.value) / 2;
}
