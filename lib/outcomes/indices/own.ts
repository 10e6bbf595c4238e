import type { ClockEvent, Criterion, Denominator, IndexDefinition, Rescue } from "./definition";

/** An index of the unit's own, as its settings hold it. */
export type OwnIndex = {
  readonly id: string;
  readonly name: string;
  readonly from: ClockEvent;
  readonly to: ClockEvent;
  /** `null`: any criterion. */
  readonly criterion: Criterion | null;
  readonly per: Denominator;
  readonly rescue: Rescue;
  readonly unit: "days/cm" | "mm/day";
};

/** The unit's own index as a clock like the built-in ones. */
export function ownIndex({ id, name, from, to, criterion, per, rescue, unit }: OwnIndex): IndexDefinition {
  const common = { id, title: name, tradeNames: [], from, to, per, rescue, unit };
  return { ...common, ...(criterion === null ? {} : { criterion }), ...(unit === "mm/day" ? { inverse: true as const } : {}) };
}
