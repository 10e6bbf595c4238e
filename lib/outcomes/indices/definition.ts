import { labelOfCode, type SegmentRow } from "@/lib/codebook";

/** An event from which, or to which, a clock runs. `end-of-treatment` is fixator removal, or consolidation where there is no fixator. */
export type ClockEvent =
  | "surgery"
  | "distraction-start"
  | "distraction-end"
  | "consolidation"
  | "full-weight-bearing"
  | "fixator-removal"
  | "end-of-treatment";

export type Denominator = "gainMm" | "gainFinalMm" | "plannedGainMm" | "plannedGainFinalMm";

/** `counted`: healing however obtained, days run on to consolidation. `competing`: rescue before consolidation ends the attempt. */
export type Rescue = "counted" | "competing";

/** A clock as data: which event to which, per which length, in which unit (measures, *Indices*). */
export type IndexDefinition = {
  readonly id: string;
  readonly title: string;
  /** What papers call it; where the trade uses a name with two meanings, both stand under each. */
  readonly tradeNames: readonly string[];
  readonly from: ClockEvent;
  readonly to: ClockEvent;
  /** `null`: the clock is read in days. */
  readonly per: Denominator | null;
  /** mm of gain a day: the clock upside down. */
  readonly inverse?: true;
  readonly rescue: Rescue;
  readonly unit: "days/cm" | "days" | "mm/day";
  /** Only bones whose healing was read by this criterion count as healed; any unless said. */
  readonly criterion?: Criterion;
  /**
   * Days from surgery on which the clock starts instead, over bones that were then lengthened, still unhealed and still followed: what is known
   * at the end of distraction (the gain, a changed plan) is known by then, and can split them without favouring who healed late.
   */
  readonly landmarkDay?: number;
};
export type Criterion = NonNullable<SegmentRow["consolidationCriterion"]>;

const index = (id: string, title: string, from: ClockEvent, to: ClockEvent, tradeNames: readonly string[]): IndexDefinition => ({
  id,
  title,
  tradeNames,
  from,
  to,
  per: "gainMm",
  rescue: "counted",
  unit: "days/cm",
});

const clock = (id: string, title: string, from: ClockEvent, to: ClockEvent): IndexDefinition => ({
  ...index(id, title, from, to, []),
  per: null,
  unit: "days",
});

/** The built-in clocks (ids.md §7), in the order in which they are offered. */
export const indexDefinitions: readonly IndexDefinition[] = [
  index("surgery-to-consolidation", "Surgery to consolidation", "surgery", "consolidation", [
    "consolidation index (from surgery)",
    "healing index",
    "bone healing index",
  ]),
  index("distraction-to-consolidation", "Distraction start to consolidation", "distraction-start", "consolidation", [
    "consolidation index (from distraction start)",
  ]),
  index("maturation", "Distraction end to consolidation", "distraction-end", "consolidation", ["maturation index"]),
  index("treatment", "Surgery to end of treatment", "surgery", "end-of-treatment", [
    "healing index (total treatment time)",
    "lengthening index",
  ]),
  index("fixator", "Surgery to fixator removal", "surgery", "fixator-removal", ["external fixation index", "lengthening index"]),
  index("weight-bearing", "Surgery to full weight bearing", "surgery", "full-weight-bearing", ["weight-bearing index"]),
  index("distraction", "Distraction start to distraction end", "distraction-start", "distraction-end", ["distraction index (days/cm)"]),
  clock("latency", "Latency", "surgery", "distraction-start"),
  clock("distraction-time", "Time of distraction", "distraction-start", "distraction-end"),
  clock("time-to-consolidation", "Time to consolidation", "surgery", "consolidation"),
  clock("time-to-full-weight-bearing", "Time to full weight bearing", "surgery", "full-weight-bearing"),
  {
    ...index("distraction-rate", "Distraction rate", "distraction-start", "distraction-end", ["distraction index (mm/day)", "mean rate"]),
    inverse: true,
    unit: "mm/day",
  },
];

/** Clocks that end at consolidation: their segments are healed, censored, ended or excluded, and nothing else. */
export function endsAtConsolidation({ to }: Pick<IndexDefinition, "to">): boolean {
  return to === "consolidation" || to === "end-of-treatment";
}

/** @throws RangeError when no built-in clock has the id */
export function indexDefinition(id: string): IndexDefinition {
  const found = indexDefinitions.find((definition) => definition.id === id);
  if (!found) throw new RangeError(`indexDefinition requires the id of a clock, received ${id}`);
  return found;
}

const eventWords: Readonly<Record<ClockEvent, string>> = {
  surgery: "surgery",
  "distraction-start": "the start of distraction",
  "distraction-end": "the end of distraction",
  consolidation: "consolidation",
  "full-weight-bearing": "full weight bearing",
  "fixator-removal": "fixator removal",
  "end-of-treatment": "the end of treatment (fixator removal, or consolidation where there is no fixator)",
};

const denominatorWords: Readonly<Record<Denominator, string>> = {
  gainMm: "per cm gained, on film at the end of distraction",
  gainFinalMm: "per cm gained, at last follow-up",
  plannedGainMm: "per cm planned at the start",
  plannedGainFinalMm: "per cm of the final plan",
};

/** The definition as a sentence of the methods. */
export function definitionSentence(definition: IndexDefinition): string {
  const start =
    definition.landmarkDay === undefined
      ? eventWords[definition.from]
      : `day ${definition.landmarkDay} after surgery, over bones by then lengthened, unhealed and still followed,`;
  const span = `from ${start} to ${eventWords[definition.to]}`;
  const length = definition.per && !definition.inverse ? ` ${denominatorWords[definition.per]}` : "";
  const measured = definition.inverse ? `length gained a day, in mm, ${span}` : `days ${span}${length}`;
  if (!endsAtConsolidation(definition)) return measured;
  const rescued =
    definition.rescue === "counted"
      ? "healing however obtained: rescued bones count and their days run on"
      : "healing without further bone surgery: a rescue ends the attempt";
  const read = definition.criterion === undefined ? "" : `; healing read by ${labelOfCode(definition.criterion).toLowerCase()} alone`;
  return `${measured}; ${rescued}${read}`;
}
