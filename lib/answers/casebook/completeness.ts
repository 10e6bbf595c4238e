import type { Where } from "@/lib/cohorts";
import type { BodyMeasure } from "@/lib/outcomes";
import { bodyMeasureAt } from "@/lib/outcomes";
import type { Registry } from "@/lib/registry";
import { type Case, casesOf } from "../frames/cases";
import { personsOf } from "../frames/persons";
import { stateAsOf } from "../question/state";

export type Completeness = {
  readonly batch: number;
  /** Audit years, or calendar years of surgery where the unit's file knew none, the latest first. */
  readonly years: readonly number[];
  /** Segments of each year. */
  readonly segments: readonly number[];
  readonly items: readonly CompletenessItem[];
};
export type CompletenessItem = {
  readonly id: string;
  readonly label: string;
  readonly group: "before surgery" | "operation and course" | "after";
  /** Segments of each year that have it; a person's measure counts for each of its segments. */
  readonly recorded: readonly number[];
};

type Person = { readonly bodyMeasures: readonly BodyMeasure[]; readonly scores: readonly { readonly scoreDay: number }[] };
type Item = Omit<CompletenessItem, "recorded"> & {
  readonly has: (one: Case, person: Person | undefined, before: (held: (m: BodyMeasure) => boolean) => boolean) => boolean;
};

const before = "before surgery" as const;
const course = "operation and course" as const;
const after = "after" as const;

const field = (group: CompletenessItem["group"], id: string, label: string): Item => ({
  id,
  label,
  group,
  has: ({ look }) => look(id) !== null,
});
const motionBefore = (joint: "kneeFlexionDeg" | "kneeExtensionDeg" | "ankleDorsiflexionDeg", label: string): Item => ({
  id: `${joint}-before`,
  label,
  group: before,
  has: ({ segment }) => segment.visits.some((visit) => visit.visitDay <= segment.surgeryDay && visit[joint] !== null),
});

const items: readonly Item[] = [
  motionBefore("kneeFlexionDeg", "Knee flexion"),
  motionBefore("kneeExtensionDeg", "Knee extension"),
  motionBefore("ankleDorsiflexionDeg", "Ankle dorsiflexion"),
  field(before, "axisDeviationBeforeMm", "Mechanical axis deviation"),
  field(before, "mldfaBeforeDeg", "Angle of the distal femur"),
  field(before, "mptaBeforeDeg", "Angle of the proximal tibia"),
  field(before, "boneLengthBeforeMm", "Length of the bone"),
  { id: "stature-before", label: "Stature", group: before, has: (_, __, held) => held((measure) => measure.statureMm !== null) },
  {
    id: "score-before",
    label: "Any score",
    group: before,
    has: ({ segment }, person) => person?.scores.some(({ scoreDay }) => scoreDay <= segment.surgeryDay) ?? false,
  },
  field(before, "plannedGainMm", "Planned gain"),
  field(before, "permittedUse", "Permitted use"),
  field(course, "device", "Device"),
  field(course, "prescribedRateMmPerDay", "Prescribed rate"),
  field(course, "distractionStartDay", "Start of distraction"),
  field(course, "distractionEndDay", "End of distraction"),
  field(course, "gainMm", "Gain"),
  {
    id: "events-looked-for",
    label: "Events looked for, fully",
    group: after,
    has: ({ segment }) => segment.eventsLookedFor === "fully",
  },
  {
    id: "film",
    label: "Any film with cortices",
    group: after,
    has: ({ segment }) => segment.visits.some(({ cortices }) => cortices !== null),
  },
  field(after, "consolidationDay", "Day of consolidation"),
  field(after, "lastFollowUpDay", "Last follow-up"),
];

const looked = [...new Set(items.map(({ id }) => id).filter((id) => !id.includes("-") && id !== "film")), "auditYear", "surgeryYear"];

/** How complete the records of a cohort are, year by year: what was recorded of each segment, not what it says. */
export async function completeness(
  registry: Registry,
  { where = {}, asOf }: { readonly where?: Where; readonly asOf?: number } = {},
): Promise<Completeness> {
  const state = await stateAsOf(registry, asOf);
  const cases = await casesOf(registry, state, where, looked);
  const persons = await personsOf(registry, state, cases);
  const yearOf = ({ look }: Case) => Number(look("auditYear") ?? look("surgeryYear"));
  const years = [...new Set(cases.map(yearOf))].sort((a, b) => b - a);
  const place = new Map(years.map((year, i) => [year, i]));
  const zeros = () => years.map(() => 0);
  const segments = zeros();
  const recorded = items.map(zeros);
  for (const one of cases) {
    const [year, person] = [place.get(yearOf(one)) ?? 0, persons.get(one.segment.person)];
    segments[year] = (segments[year] ?? 0) + 1;
    const held = (test: (measure: BodyMeasure) => boolean) => person !== undefined && bodyMeasureAt(person, "before", test) !== null;
    for (const [i, item] of items.entries()) if (item.has(one, person, held)) add(recorded[i], year);
  }
  return {
    batch: state.batch,
    years,
    segments,
    items: items.map(({ id, label, group }, i) => ({ id, label, group, recorded: recorded[i] ?? [] })),
  };
}

function add(counts: number[] | undefined, year: number): void {
  if (counts) counts[year] = (counts[year] ?? 0) + 1;
}
