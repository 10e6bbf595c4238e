import { phaseOf, type Scheme, treatmentEnd, worseOf } from "@/lib/outcomes";
import { estimate } from "@/lib/stats";
import { seed } from "../healing/median-interval";
import { said } from "../healing/said";
import type { Interval, Note } from "../types";
import type { CountedSegment, Counting } from "./counted";
import { recordedClass } from "./events";

/** How far the class that the surgeon recorded and the one derived from the facts agree. */
export type Agreement = {
  /** What was classed twice: events, or treatments where the scheme classes those. */
  readonly of: Scheme["of"];
  readonly n: number;
  readonly patients: number;
  /** Classed alike. */
  readonly alike: number;
  /** Weighted kappa, quadratic; its interval from twenty patients on. */
  readonly kappa: Pick<Interval, "estimate" | "lower" | "upper">;
  /** By class in the order of the scheme: recorded down, derived across. */
  readonly table: readonly (readonly number[])[];
  readonly method: string;
  readonly notes: readonly Note[];
};

type Rated = { readonly person: number; readonly recorded: number; readonly derived: number };

/** `null` where no class was recorded beside one that could be derived. */
export function agreementOf(segments: readonly CountedSegment[], counting: Counting): Agreement | null {
  const { scheme } = counting;
  const rows = segments.flatMap((counted) => (scheme.of === "segment" ? treatmentRated(counted, scheme) : eventsRated(counted, counting)));
  if (rows.length === 0) return null;
  const { records, notes } = estimate({
    situation: "agreement",
    first: rows.map(({ recorded }) => recorded),
    second: rows.map(({ derived }) => derived),
    classCount: scheme.classes.length,
    patient: rows.map(({ person }) => person),
    seed,
  });
  const { estimate: kappa, lower, upper, table, patients, method } = records.kappa;
  return {
    of: scheme.of,
    n: rows.length,
    patients: patients ?? 0,
    alike: rows.filter(({ recorded, derived }) => recorded === derived).length,
    kappa: { estimate: kappa, lower, upper },
    table,
    method,
    notes: notes.map(said),
  };
}

function eventsRated({ one: { segment }, events }: CountedSegment, { scheme, endRule }: Counting): readonly Rated[] {
  const end = treatmentEnd(segment, endRule);
  return events.flatMap((event) => {
    const derived = scheme.classify({ ...event, phase: phaseOf(event, segment, end) }, end);
    return ratedAs(segment.person, recordedIn(event, scheme), derived, scheme);
  });
}

/** The heaviest class recorded of a treatment's events, beside the class of the treatment. */
function treatmentRated({ one: { segment }, events, classes }: CountedSegment, scheme: Scheme): readonly Rated[] {
  const recorded = events.reduce<string | null>((held, event) => worseOf(scheme, held, recordedIn(event, scheme)), null);
  return ratedAs(segment.person, recorded, classes[0] ?? null, scheme);
}

function recordedIn(event: CountedSegment["events"][number], { id }: Scheme): string | null {
  // schemes are those of the codebook, and each has its field
  return event[recordedClass[id as keyof typeof recordedClass]];
}

function ratedAs(person: number, recorded: string | null, derived: string | null, { classes }: Scheme): readonly Rated[] {
  if (recorded === null || derived === null) return [];
  return [{ person, recorded: classes.indexOf(recorded), derived: classes.indexOf(derived) }];
}
