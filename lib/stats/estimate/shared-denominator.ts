import type { GroupLabels } from "../cluster/groups";
import type { Note } from "../notes";
import { standardisedDifference } from "../standardised-difference";
import { thresholds } from "../thresholds";

/**
 * The note that an index falls with gain by arithmetic, when the values are an index (its gains are given) and the gains of the groups
 * lie further apart than chance would let them. Gains that can't be compared (one row, no spread but a difference) count as apart.
 */
export function sharedDenominator(
  gains: readonly number[] | undefined,
  group: GroupLabels,
  pairs: readonly (readonly [string | number, string | number])[],
): readonly Note[] {
  if (!gains) return [];
  const apart = pairs.some((between) => {
    const { estimate } = standardisedDifference({ kind: "continuous", values: gains, group, between });
    return estimate === null || Math.abs(estimate) > thresholds.gainsApart;
  });
  return apart ? [{ code: "shared-denominator" }] : [];
}
